import { fail, issue, ok, type Result } from "@/lib/base";
import type { Db } from "@/lib/db";
import { auth } from "./auth";
import type { NewAccount } from "./accounts";
import type { AccountIssue } from "./issue";
import { isRefusal } from "./is-refusal";
import { passphraseLimit } from "./limits";
import { makeThrottle } from "./throttle";

/** Failed tries, by sign-in name. */
const tries = makeThrottle(passphraseLimit);

/** Opens a session; the library sets its cookie on the running request. */
export async function signIn(
  db: Db,
  { signInName, passphrase }: NewAccount,
  headers: Headers,
  now: number,
): Promise<Result<null, AccountIssue>> {
  const name = signInName.toLowerCase();
  const seconds = tries.waitSeconds(name, now);
  if (seconds > 0) return fail(issue("too-many-tries", [], { seconds }));
  try {
    const answer = await auth(db).api.signInUsername({
      body: { username: name, password: passphrase },
      headers,
    });
    if (answer) {
      tries.forget(name);
      return ok(null);
    }
  } catch (error) {
    if (!isRefusal(error)) throw error;
  }
  tries.count(name, now);
  return fail(issue("sign-in-refused"));
}

export async function signOut(db: Db, headers: Headers): Promise<void> {
  await auth(db).api.signOut({ headers });
}
