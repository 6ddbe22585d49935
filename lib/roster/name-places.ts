import type { Db } from "@/lib/db";
import { allSubjects, subjectState } from "@/lib/store";

/** A text that holds somebody's name, or a part of it. */
export interface NamePlace {
  /** "bead:ID" */
  readonly subject: string;
  /** Running number, title or name of what it stands in; null where it has none. */
  readonly title: string | null;
  /** Way to the text: ["judgement", "note"]. */
  readonly path: readonly string[];
  /** Signed, returned or a version: it cannot be edited any more. */
  readonly frozen: boolean;
}

/** A word of a name that is shorter is looked for only within the whole name: "Bo" alone is many things. */
const SHORTEST_WORD = 3;

/** Without marks over letters, so that "Åse" is found in "ase". */
const plainLetters = (text: string): string => text.normalize("NFKD").replace(/\p{M}/gu, "");

/**
 * Finds the whole name or any longer word of it, as whole words, whatever their case and the marks over their letters.
 * null: there is nothing to look for.
 */
export function nameFinder(name: string): ((text: string) => boolean) | null {
  const words = plainLetters(name)
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== "");
  if (words.length === 0) return null;
  const wanted = [words.join("[^\\p{L}\\p{N}]+"), ...words.filter((word) => word.length >= SHORTEST_WORD)];
  const pattern = new RegExp(`(?<![\\p{L}\\p{N}])(?:${wanted.join("|")})(?![\\p{L}\\p{N}])`, "iu");
  return (text) => pattern.test(plainLetters(text));
}

type State = Readonly<Record<string, unknown>>;

/**
 * Where a person's name stands in titles, notes and other free texts that removing them leaves as they are. What the
 * removal erases by itself is not among them. A hit may be another person of that name: people decide, not we.
 */
export async function placesOfName(db: Db, personId: string): Promise<readonly NamePlace[]> {
  const person = await db.person.findUnique({ where: { id: personId }, include: { handIns: true } });
  const finds = person?.name ? nameFinder(person.name) : null;
  if (!person || !finds) return [];
  const handIns = new Set(person.handIns.map(({ id }) => id));
  const places: NamePlace[] = [];
  for (const subject of await allSubjects(db)) {
    if (subject.startsWith("person:")) continue;
    const state = (await subjectState(db, subject)) as State | null;
    if (state === null) continue;
    const erased = erasedWith(subject, state, personId, handIns);
    for (const path of textsWith(finds, state))
      if (!erased.includes(path[0] ?? ""))
        places.push({ subject, title: titleOf(state), path, frozen: isFrozen(subject, path, state) });
  }
  return places;
}

/** What removing the person empties (`removePerson`). */
function erasedWith(
  subject: string,
  state: State,
  personId: string,
  handIns: ReadonlySet<string>,
): readonly string[] {
  if (/^(deleted-)?bead:/.test(subject)) return state["welderId"] === personId ? ["welder"] : [];
  if (subject.startsWith("hand-in:")) return state["personId"] === personId ? ["givenName", "note"] : [];
  if (subject.startsWith("feedback:")) return handIns.has(subject.slice("feedback:".length)) ? ["reply"] : [];
  return [];
}

function isFrozen(subject: string, path: readonly string[], state: State): boolean {
  if (subject.startsWith("signed:") || subject.startsWith("criteria:")) return true;
  return subject.startsWith("feedback:") && state["returned"] !== null && path[0] !== "reply";
}

function titleOf({ number, title, name, content }: State): string | null {
  const inner = (content ?? {}) as { title?: unknown; name?: unknown };
  const found = [number, title, name, inner.title, inner.name].find(
    (one) => typeof one === "number" || typeof one === "string",
  );
  return found === undefined ? null : String(found);
}

function textsWith(
  finds: (text: string) => boolean,
  value: unknown,
  path: readonly string[] = [],
): (readonly string[])[] {
  if (typeof value === "string") return finds(value) ? [path] : [];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => textsWith(finds, inner, [...path, key]));
}
