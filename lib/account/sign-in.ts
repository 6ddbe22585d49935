import { fail, issue, ok, type Result } from "@/lib/base";
import type { Db } from "@/lib/db";
import { auth } from "./auth";
import type { NewAccount } from "./accounts";
import type { AccountIssue } from "./issue";
import { forgetFailures, noteFailure, waitSeconds } from "./tries";

/** Opens a session; the library sets its cookie on the running request. */
export async function signIn(
  db: Db,
  { signInName, passphrase }: NewAccount,
  headers: Headers,
  now: number,
): Promise<Result<null, AccountIssue>> {
  const name = signInName.toLowerCase();
  const seconds = waitSeconds(name, now);
  if (seconds > 0) return fail(issue("too-many-tries", [], { seconds }));
  try {
    const answer = await auth(db).api.signInUsername({
      body: { username: name, password: passphrase },
      headers,
    });
    if (answer) {
      forgetFailures(name);
      return ok(null);
    }
  } catch (error) {
    if (!isRefusal(error)) throw error;
  }
  noteFailure(name, now);
  return fail(issue("sign-in-refused"));
}

function isRefusal(error: unknown): boolean {
  const status = (error as { statusCode?: unknown }).statusCode;
  return typeof status === "number" && status >= 400 && status < 500;
}

export async function signOut(db: Db, headers: Headers): Promise<void> {
  await auth(db).api.signOut({ headers });
}
