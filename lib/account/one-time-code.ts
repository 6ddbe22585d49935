import { createHash, randomInt } from "node:crypto";
import type { Db, Tx } from "@/lib/db";

/** Long enough for somebody who is not in the shop today. */
const GOOD_FOR_MS = 3 * 24 * 60 * 60 * 1000;

/** Without look-alikes: it is read off a screen or a slip of paper. Twenty of them are 98 bits, which nobody guesses. */
const letters = "ABCDEFGHJKMNPQRSTVWXYZ23456789";
const newCode = (): string => {
  const code = Array.from({ length: 20 }, () => letters[randomInt(letters.length)]).join("");
  return (code.match(/.{5}/g) ?? []).join("-");
};

/** What is kept of a code; spaces, dashes and small letters make no other code of it. */
const digest = (code: string): string =>
  createHash("sha256")
    .update(code.toUpperCase().replaceAll(/[^A-Z0-9]/g, ""))
    .digest("hex");

const rowOf = (userId: string): string => `one-time-code:${userId}`;

/**
 * A code by which the holder of an account chooses their passphrase, once; the one given before it ends. `by`: who gave
 * it, as the log names people. It is said this once: what is kept is its digest.
 */
export async function giveCode(
  tx: Tx,
  userId: string,
  by: string,
  now: Date,
): Promise<{ readonly code: string; readonly until: string }> {
  const code = newCode();
  const expiresAt = new Date(now.getTime() + GOOD_FOR_MS);
  const identifier = rowOf(userId);
  await tx.verification.deleteMany({ where: { identifier } });
  await tx.verification.create({
    data: { id: identifier, identifier, value: `${digest(code)} ${by}`, expiresAt },
  });
  return { code, until: expiresAt.toISOString() };
}

export interface CodeHolder {
  readonly userId: string;
  readonly givenBy: string;
}

/** Whose code this is; null: nobody's, or it is too old. */
export async function codeHolder(db: Db | Tx, code: string, now: Date): Promise<CodeHolder | null> {
  const row = await db.verification.findFirst({
    where: {
      identifier: { startsWith: rowOf("") },
      value: { startsWith: `${digest(code)} ` },
      expiresAt: { gt: now },
    },
  });
  if (!row) return null;
  return { userId: row.identifier.slice(rowOf("").length), givenBy: row.value.slice(65) };
}

/** Uses a code up. False: somebody was faster. */
export async function takeCode(tx: Tx, { userId }: CodeHolder, code: string): Promise<boolean> {
  const where = { identifier: rowOf(userId), value: { startsWith: `${digest(code)} ` } };
  return (await tx.verification.deleteMany({ where })).count === 1;
}
