import { openAccount } from "@/lib/account";
import { chooseByCode, giveOneTimeCode, setAccount } from "@/lib/roster";
import type { Pen } from "@/lib/store";

function value<T>(result: { ok: true; value: T } | { ok: false; issues: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

/** Opens an account for a person, who chooses this passphrase with their one-time code. Says the user id. */
export async function openAccountOf(
  pen: Pen,
  personId: string,
  signInName: string,
  passphrase: string,
  now = new Date(),
): Promise<string> {
  const userId = value(await openAccount(pen.db, signInName));
  value(await setAccount(pen, personId, userId));
  const { code } = value(await giveOneTimeCode(pen, personId, now));
  value(await chooseByCode(pen.db, code, passphrase, now));
  return userId;
}
