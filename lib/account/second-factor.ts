import { createHash, randomBytes, randomInt } from "node:crypto";
import { base32 } from "@better-auth/utils/base32";
import { symmetricDecrypt, symmetricEncrypt } from "better-auth/crypto";
import { z } from "zod";
import { fail, issue, ok, type Result } from "@/lib/base";
import { dataFolderOf, writeTogether, type Db, type Tx } from "@/lib/db";
import type { AccountIssue } from "./issue";
import { accountSecret } from "./secret";
import { stepAt, stepTyped, totpAddress } from "./totp";

const RECOVERY_CODES = 10;
/** Without look-alikes: it is read off paper. Twelve of them are 58 bits. */
const letters = "bcdfghjkmnpqrstvwxyz23456789";

const hashOf = (code: string): string => createHash("sha256").update(code).digest("hex");
const plain = (typed: string): string => typed.replace(/[\s-]/g, "").toLowerCase();
const RecoverySchema = z.array(z.string());

/** What stands on the page of one's own account. */
export interface SecondFactorState {
  readonly on: boolean;
  /** Begun and not confirmed: what the phone is to read; null: nothing is begun. */
  readonly toRead: { readonly address: string; readonly key: string } | null;
  readonly recoveryLeft: number;
}

const keyFor = (db: Db): string => accountSecret(dataFolderOf(db));

export async function secondFactorState(db: Db, userId: string, account: string): Promise<SecondFactorState> {
  const row = await db.secondFactor.findUnique({ where: { userId } });
  if (!row) return { on: false, toRead: null, recoveryLeft: 0 };
  const recoveryLeft = RecoverySchema.parse(row.recovery).length;
  if (row.confirmed) return { on: true, toRead: null, recoveryLeft };
  const secret = await symmetricDecrypt({ key: keyFor(db), data: row.secret });
  const key = base32.encode(secret, { padding: false });
  return { on: false, toRead: { address: totpAddress(secret, account), key }, recoveryLeft };
}

/** Begins one: from now on the page shows what the phone is to read. One that counts already stays. */
export async function beginSecondFactor(db: Db, userId: string): Promise<Result<null, AccountIssue>> {
  const there = await db.secondFactor.findUnique({ where: { userId } });
  if (there?.confirmed) return fail(issue("second-factor-on"));
  const secret = await symmetricEncrypt({ key: keyFor(db), data: randomBytes(20).toString("base64url") });
  const fresh = { secret, recovery: [], lastStep: 0, confirmed: false };
  await db.secondFactor.upsert({ where: { userId }, create: { userId, ...fresh }, update: fresh });
  return ok(null);
}

/** The first number from the phone: from now on it is asked for. Says the recovery codes, this one time. */
export async function confirmSecondFactor(
  db: Db,
  userId: string,
  typed: string,
  now: Date,
): Promise<Result<readonly string[], AccountIssue>> {
  const row = await db.secondFactor.findUnique({ where: { userId } });
  if (!row || row.confirmed) return fail(issue("second-factor-none-begun"));
  const secret = await symmetricDecrypt({ key: keyFor(db), data: row.secret });
  const step = await stepTyped(secret, plain(typed), { nowMs: now.getTime(), after: row.lastStep });
  if (step === null) return fail(issue("second-factor-wrong", ["number"]));
  const codes = Array.from({ length: RECOVERY_CODES }, () =>
    Array.from({ length: 12 }, () => letters[randomInt(letters.length)]).join(""),
  );
  const recovery = codes.map(hashOf);
  await db.secondFactor.update({ where: { userId }, data: { confirmed: true, lastStep: step, recovery } });
  return ok(codes.map((code) => code.replace(/(.{4})(?=.)/g, "$1-")));
}

/** Whether this user is asked for a second thing. */
export async function hasSecondFactor(db: Db, userId: string): Promise<boolean> {
  return (await db.secondFactor.count({ where: { userId, confirmed: true } })) > 0;
}

/**
 * Whether a number from the phone or a recovery code is this user's, and uses it up: two at once with the same one are one.
 * A user without a second factor has nothing to show.
 */
export async function showsSecondFactor(db: Db, userId: string, typed: string, now: Date): Promise<boolean> {
  const row = await db.secondFactor.findUnique({ where: { userId } });
  if (!row?.confirmed) return true;
  const code = plain(typed);
  const secret = await symmetricDecrypt({ key: keyFor(db), data: row.secret });
  const step = await stepTyped(secret, code, { nowMs: now.getTime(), after: row.lastStep });
  if (step !== null) {
    // A clock that was put back must not leave a step in the future behind which every number is old.
    const after = Math.min(step, stepAt(now.getTime()) + 1);
    return takeOnce(db, userId, { lastStep: row.lastStep }, { lastStep: after });
  }
  return useRecovery(db, userId, hashOf(code));
}

async function takeOnce(db: Db, userId: string, was: { lastStep: number }, to: { lastStep: number }) {
  return (await db.secondFactor.updateMany({ where: { userId, ...was }, data: to })).count === 1;
}

function useRecovery(db: Db, userId: string, hash: string): Promise<boolean> {
  return writeTogether(db, async (tx) => {
    const row = await tx.secondFactor.findUnique({ where: { userId } });
    const left = RecoverySchema.parse(row?.recovery ?? []);
    if (!left.includes(hash)) return false;
    await tx.secondFactor.update({
      where: { userId },
      data: { recovery: left.filter((one) => one !== hash) },
    });
    return true;
  });
}

/** From now on the passphrase alone is asked for. */
export async function endSecondFactor(db: Db | Tx, userId: string): Promise<void> {
  await db.secondFactor.deleteMany({ where: { userId } });
}
