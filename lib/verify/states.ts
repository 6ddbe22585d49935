import { canonicalJson } from "@/lib/base";
import { writeTogether, type Db, type Tx } from "@/lib/db";
import { compareStates, type StateIssue } from "@/lib/ledger";
import {
  countLoggedSubjects,
  isLoggedKind,
  latestDigests,
  loggedSubjects,
  sha256Text,
  subjectSlices,
  subjectState,
} from "@/lib/store";
import { counter, type Walk } from "./walk";

/** Subjects read at once. */
const SLICE = 100;
/** Names alone, read at once. */
const NAMES = 1000;

/**
 * Everything there is against what the log last said of it; of `only` these, where the walk was of a part of the log.
 * Answers with how many were there.
 */
export async function* checkStates(db: Db, only: ReadonlySet<string> | null): Walk<number> {
  const count = counter("records", only?.size ?? (await countLoggedSubjects(db)));
  let there = 0;
  const slices = only === null ? loggedSubjects(db, SLICE) : inSlices([...only]);
  for await (const subjects of slices) {
    const states = await presentDigests(db, subjects);
    there += states.size;
    const differing = compareStates(await latestDigests(db, subjects), states).map(({ path }) =>
      String(path[0]),
    );
    yield count.step(subjects.length, differing.length > 0 ? await lookedAtAgain(db, differing) : []);
  }
  yield count.end();
  return only === null ? there + (yield* checkUnlogged(db, there)) : there;
}

/** What is there and the log never spoke of, beside those that it spoke of and are `there`. Answers with how many. */
async function* checkUnlogged(db: Db, there: number): Walk<number> {
  const count = counter("unlogged records", there);
  let found = 0;
  for await (const subjects of subjectSlices(db, NAMES)) {
    const logged = await latestDigests(db, subjects);
    const unknown = subjects.filter((subject) => !logged.has(subject));
    found += unknown.length;
    yield count.step(subjects.length, unknown.length > 0 ? await lookedAtAgain(db, unknown) : []);
  }
  yield count.end();
  return found;
}

/** While we look others write. What did not fit is looked at again while nobody does; what fits then was only under way. */
async function lookedAtAgain(db: Db, subjects: readonly string[]): Promise<readonly StateIssue[]> {
  return writeTogether(db, async (tx) =>
    compareStates(await latestDigests(tx, subjects), await presentDigests(tx, subjects)),
  );
}

/** SHA-256 of the present state of each of these that is there. */
async function presentDigests(
  db: Db | Tx,
  subjects: readonly string[],
): Promise<ReadonlyMap<string, string>> {
  const known = subjects.filter(isLoggedKind);
  const digests = new Map<string, string>();
  const keep = (subject: string, state: unknown): void => {
    if (state !== null) digests.set(subject, sha256Text(canonicalJson(state)));
  };
  try {
    // Asked for at once the database reads them together.
    const states = await Promise.all(known.map((subject) => subjectState(db, subject)));
    for (const [i, state] of states.entries()) keep(known[i] ?? "", state);
  } catch {
    for (const subject of known) {
      // A row that cannot even be read any more (JSON cut short, a date that is none) was changed: no digest fits it.
      const state = await subjectState(db, subject).catch(() => "unreadable");
      if (state === "unreadable") digests.set(subject, state);
      else keep(subject, state);
    }
  }
  return digests;
}

function* inSlices(subjects: readonly string[]): Generator<readonly string[]> {
  for (let from = 0; from < subjects.length; from += SLICE) yield subjects.slice(from, from + SLICE);
}
