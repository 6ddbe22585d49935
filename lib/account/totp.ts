import { createOTP } from "@better-auth/utils/otp";

/** RFC 6238 as every authenticator reads it: SHA-1, six digits, half a minute. */
const PERIOD_MS = 30_000;
/** A phone's clock may be off by this many half minutes either way. */
const OFF_BY = 1;

export const stepAt = (nowMs: number): number => Math.floor(nowMs / PERIOD_MS);

/** The number that is shown in a half minute. */
export const numberAt = (secret: string, step: number): Promise<string> => createOTP(secret).hotp(step);

/**
 * The half minute whose number was typed, if it is one of those that may be meant now and comes after `after`: so a number
 * that was looked at over a shoulder is good for nothing once it was used.
 */
export async function stepTyped(
  secret: string,
  typed: string,
  { nowMs, after }: { readonly nowMs: number; readonly after: number },
): Promise<number | null> {
  const now = stepAt(nowMs);
  let found: number | null = null;
  for (let step = now - OFF_BY; step <= now + OFF_BY; step += 1) {
    // Every one is worked out, found or not, so that the time tells nothing.
    const fits = (await numberAt(secret, step)) === typed;
    if (fits && step > after) found = step;
  }
  return found;
}

/** What an authenticator reads from a QR code. */
export const totpAddress = (secret: string, account: string): string =>
  createOTP(secret).url("Toeline", account);
