import {
  codeHolder,
  endSecondFactor,
  giveCode,
  hasSecondFactor,
  passphraseFits,
  passphraseHash,
  takeCode,
  writePassphrase,
  type AccountIssue,
} from "@/lib/account";
import { fail, issue, ok, type Result } from "@/lib/base";
import type { Db } from "@/lib/db";
import { preparePersonKey, writePersonKey } from "@/lib/keys";
import { signs } from "@/lib/people";
import { writing, type Pen, type RecordIssue } from "@/lib/store";
import { getPerson, type PersonRecord } from "./people";

type Refusal = AccountIssue | RecordIssue;

/**
 * A code by which a person with an account chooses their own passphrase, once. Nobody sets the passphrase of somebody
 * else: whoever knows it could sign for them. The passphrase until now holds until the code is used.
 */
export async function giveOneTimeCode(
  pen: Pen,
  personId: string,
  now: Date,
): Promise<Result<{ readonly code: string; readonly until: string }, Refusal>> {
  const person = await getPerson(pen.db, personId);
  if (!person) return fail(issue("person-gone"));
  const { userId } = person;
  if (userId === null) return fail<Refusal>(issue("account-missing"));
  return writing(pen, async (tx, log) => {
    const given = await giveCode(tx, userId, pen.by, now);
    await log(`person:${personId}`, "passphrase.code-given", { until: given.until });
    return ok(given);
  });
}

/** Takes a lost phone off somebody's account: their passphrase alone opens it until they begin anew. The log says who did. */
export async function takeOffSecondFactor(pen: Pen, personId: string): Promise<Result<null, Refusal>> {
  const person = await getPerson(pen.db, personId);
  if (!person) return fail(issue("person-gone"));
  const { userId } = person;
  if (userId === null || !(await hasSecondFactor(pen.db, userId)))
    return fail<Refusal>(issue("second-factor-none-begun"));
  return writing(pen, async (tx, log) => {
    await endSecondFactor(tx, userId);
    await log(`person:${personId}`, "passphrase.second-factor-taken-off");
    return ok(null);
  });
}

/**
 * Chooses a passphrase with a one-time code. An inspector's key begins with it; one from before ends, because nobody can
 * open it any more. Who gave the code stands with the key, and on every record signed by it.
 */
export async function chooseByCode(
  db: Db,
  code: string,
  passphrase: string,
  now: Date,
): Promise<Result<null, Refusal>> {
  const holder = await codeHolder(db, code, now);
  const row =
    holder && (await db.person.findUnique({ where: { userId: holder.userId }, select: { id: true } }));
  const person = row && (await getPerson(db, row.id));
  if (!holder || !person) return fail(issue("code-unknown"));
  const pen = { db, by: `person:${person.id}` };
  return setPassphrase(pen, person, { before: null, passphrase, code, givenBy: holder.givenBy, now });
}

/** Changes one's own passphrase. An inspector's key goes on where the passphrase until now opens it. */
export async function chooseOwnPassphrase(
  pen: Pen,
  personId: string,
  { before, passphrase }: { readonly before: string; readonly passphrase: string },
  now: Date,
): Promise<Result<null, Refusal>> {
  const person = await getPerson(pen.db, personId);
  if (!person?.userId) return fail(issue("account-missing"));
  if (!(await passphraseFits(pen.db, person.userId, before))) return fail(issue("passphrase-before-wrong"));
  return setPassphrase(pen, person, { before, passphrase, code: null, givenBy: null, now });
}

interface Choice {
  readonly before: string | null;
  readonly passphrase: string;
  readonly code: string | null;
  readonly givenBy: string | null;
  readonly now: Date;
}

/** Account, key and log change together or not at all; what takes time is worked out before. */
async function setPassphrase(
  pen: Pen,
  { id, userId, ...held }: PersonRecord,
  { before, passphrase, code, givenBy, now }: Choice,
): Promise<Result<null, Refusal>> {
  if (userId === null) return fail(issue("account-missing"));
  const hash = await passphraseHash(pen.db, userId, passphrase);
  if (!hash.ok) return hash;
  const key = signs(held) ? await preparePersonKey(pen.db, id, before, passphrase) : null;
  // A first key says so: who else knew the passphrase before it, nobody can tell.
  const setBy = givenBy !== null ? `code:${givenBy}` : key?.begins ? "first" : "own";
  let used = true;
  const done = await writing(pen, async (tx, log) => {
    used = code === null || (await takeCode(tx, { userId, givenBy: givenBy ?? "" }, code));
    if (!used) return ok(null);
    await writePassphrase(tx, userId, hash.value);
    if (key) await writePersonKey(tx, pen.by, id, key, { at: now.toISOString(), setBy });
    await log(`person:${id}`, "passphrase.chosen", { by: setBy });
    return ok(null);
  });
  return used ? done : fail(issue("code-unknown"));
}
