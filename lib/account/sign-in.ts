import { fail, issue, ok, type Result } from "@/lib/base";
import type { Db } from "@/lib/db";
import { isUsableName, passphraseFits, type NewAccount } from "./accounts";
import { addressOf } from "./address";
import { auth } from "./auth";
import type { AccountIssue } from "./issue";
import { isRefusal } from "./is-refusal";
import { knownBrowser, readKnownBrowser } from "./known-browser";
import { passphraseLimit, signInsByAddressLimit, signInsByNameLimit } from "./limits";
import { noteRefusal } from "./note-refusal";
import { hasSecondFactor, showsSecondFactor } from "./second-factor";
import { giveBackAll, makeThrottle, takeAll, type Counter } from "./throttle";

/** Failed tries: with a name at one address, at one address, with a name everywhere; and of a known browser alone. */
const byPair = makeThrottle("sign-in-pair", passphraseLimit);
const byAddress = makeThrottle("sign-in-address", signInsByAddressLimit);
const byName = makeThrottle("sign-in-name", signInsByNameLimit);
const byBrowser = makeThrottle("sign-in-browser", passphraseLimit);

function countersOf(name: string, address: string, browser: string | null): readonly Counter[] {
  if (browser !== null) return [[byBrowser, browser]];
  return [
    [byPair, `${address} ${name}`],
    [byAddress, address],
    [byName, name],
  ];
}

/**
 * Opens a session; the library sets its cookie on the running request.
 *
 * @param known What this browser keeps of an earlier sign-in. @param now In ms.
 * @returns What the browser is to keep from now on.
 */
export async function signIn(
  db: Db,
  { signInName, passphrase, number = "" }: NewAccount & { readonly number?: string },
  headers: Headers,
  now: number,
  known: string | null,
): Promise<Result<{ readonly known: string }, AccountIssue>> {
  const name = signInName.length > 40 ? "" : signInName.toLowerCase();
  const address = addressOf(headers);
  // A name that can be none is no way to fill anything, and no way past the address either.
  const browser = isUsableName(name) ? readKnownBrowser(name, known) : null;
  const counters = countersOf(isUsableName(name) ? name : "", address, browser);
  // Counted before it is answered: otherwise as many at once as one likes would be one try.
  const seconds = await takeAll(db, counters, now);
  if (seconds > 0) {
    noteRefusal("sign-in-throttled", address);
    return fail(issue("too-many-tries", [], { seconds }));
  }
  const shown = isUsableName(name) ? await showsBoth(db, name, { passphrase, number }, new Date(now)) : null;
  // The passphrase fitted, so this is no guess of it; guesses of the number are counted like any other.
  if (shown === "second-factor-wanted") {
    await giveBackAll(db, counters, now);
    return fail(issue(shown));
  }
  if (shown === "second-factor-wrong") {
    noteRefusal("second-factor-refused", address);
    return fail(issue(shown, ["number"]));
  }
  if (isUsableName(name) && (await fits(db, name, passphrase, headers))) {
    await giveBackAll(db, counters, now);
    await counters[0]![0].forget(db, counters[0]![1]);
    return ok({ known: knownBrowser(name) });
  }
  noteRefusal("sign-in-refused", address);
  return fail(issue("sign-in-refused"));
}

/**
 * What keeps somebody out whose account asks for a number besides; null: nothing does, or the passphrase is not theirs, which
 * is asked for first, so that nobody learns by it that there is such an account.
 */
async function showsBoth(
  db: Db,
  username: string,
  { passphrase, number }: { readonly passphrase: string; readonly number: string },
  now: Date,
): Promise<"second-factor-wanted" | "second-factor-wrong" | null> {
  const user = await db.user.findUnique({ where: { username }, select: { id: true } });
  if (!user || !(await hasSecondFactor(db, user.id))) return null;
  if (!(await passphraseFits(db, user.id, passphrase))) return null;
  if (number.trim() === "") return "second-factor-wanted";
  return (await showsSecondFactor(db, user.id, number.slice(0, 40), now)) ? null : "second-factor-wrong";
}

async function fits(db: Db, username: string, password: string, headers: Headers): Promise<boolean> {
  try {
    return Boolean(await auth(db).api.signInUsername({ body: { username, password }, headers }));
  } catch (error) {
    if (!isRefusal(error)) throw error;
    return false;
  }
}

export async function signOut(db: Db, headers: Headers): Promise<void> {
  await auth(db).api.signOut({ headers });
}
