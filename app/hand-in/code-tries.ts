import { addressOf, codeLimit, makeThrottle, noteRefusal } from "@/lib/account";
import { normaliseCode } from "@/lib/course";

/** Codes that led nowhere, by address: a code has six letters, and whoever goes through them all comes from somewhere. */
const wrongCodes = makeThrottle(codeLimit);

/** Seconds to wait before the next code is looked at; 0: none. */
export const waitForCode = (headers: Headers, now = Date.now()): number =>
  wrongCodes.waitSeconds(addressOf(headers), now);

/** This code led nowhere. */
export function countWrongCode(headers: Headers, now = Date.now()): void {
  noteRefusal("hand-in-refused", addressOf(headers));
  wrongCodes.count(addressOf(headers), now);
}

/** The code in an address as it is stored. What is no text in an address is no code. */
export function codeOf(part: string): string {
  try {
    return normaliseCode(decodeURIComponent(part));
  } catch {
    return "";
  }
}
