import { addressOf, codeLimit, makeThrottle, noteRefusal } from "@/lib/account";
import { takingExercise } from "@/lib/classroom";
import { normaliseCode } from "@/lib/course";
import type { Db } from "@/lib/db";

/** Codes that led nowhere, by address: a code has six letters, and whoever goes through them all comes from somewhere. */
const wrongCodes = makeThrottle("hand-in-code", codeLimit);

/** Seconds to wait before the next code is looked at; 0: none. */
export const waitForCode = (db: Db, headers: Headers, now = Date.now()): Promise<number> =>
  wrongCodes.waitSeconds(db, addressOf(headers), now);

/** This code led nowhere. */
export async function countWrongCode(db: Db, headers: Headers, now = Date.now()): Promise<void> {
  noteRefusal("hand-in-refused", addressOf(headers));
  await wrongCodes.count(db, addressOf(headers), now);
}

/** The code in an address as it is stored. What is no text in an address is no code. */
export function codeOf(part: string): string {
  try {
    return normaliseCode(decodeURIComponent(part));
  } catch {
    return "";
  }
}

/**
 * The exercise a code leads to, if it takes a bead from this hand now. Where too many codes led nowhere from this address,
 * none is looked at: `seconds` to wait comes instead.
 */
export async function exerciseAsked(db: Db, headers: Headers, code: string, hasAccount: boolean) {
  const seconds = await waitForCode(db, headers);
  if (seconds > 0) return { seconds };
  const taking = await takingExercise(db, code, hasAccount);
  if (!taking.ok && taking.issues[0]?.code === "hand-in-code-unknown") await countWrongCode(db, headers);
  return taking;
}
