import { logOdds } from "@/lib/numeric";
import { inOrderOfTrial } from "../change";
import { pullApart, sameFamily } from "../tables/knobs";
import type { CauseId } from "../cause-ids";
import type { Change, RankedCause } from "../types";
import { groundOf, type Ground, type Grounds } from "./grounds";
import { adviceLimits, type AdviceLimits } from "./limits";

export interface Advice {
  /** null: nothing stands out, or nothing needs a change. */
  readonly first: Change | null;
  /** In order, each only if the one before does not cure it; never the opposite of one before. */
  readonly next: readonly Change[];
}

/** What of the bead decides whether to speak at all. */
export interface Bead {
  /** Something on it asks for a cause. */
  readonly marked: boolean;
  readonly enough: boolean;
  /** Causes of which the bead shows the opposite: their cure would make it worse. */
  readonly contrary: ReadonlySet<CauseId>;
  /** How many things known speak for a cause by themselves. */
  readonly supports: (cause: CauseId) => number;
}

const none: Advice = { first: null, next: [] };
const rank: Readonly<Record<Ground, number>> = { record: 0, answer: 1, evidence: 2 };

/**
 * The one change to try and what comes after it. What the record or an answer shows wrong comes first, always; what was
 * answered or recorded as right is never proposed; from marks and readings a change is proposed only for a cause that
 * has evidence of its own and stands out from the others.
 */
export function advise(
  causes: readonly RankedCause[],
  grounds: Grounds,
  bead: Bead,
  limits: AdviceLimits = adviceLimits,
): Advice {
  const open = causes.filter(
    (cause) =>
      !grounds.cleared.has(cause.id) &&
      !(bead.contrary.has(cause.id) && groundOf(cause.id, grounds) === "evidence") &&
      moves(cause.change) &&
      (groundOf(cause.id, grounds) !== "evidence" || hasEvidence(cause, limits)),
  );
  const known = open.filter(({ id }) => groundOf(id, grounds) !== "evidence");
  const first = known.length > 0 ? firstOf(known, grounds) : standsOut(open, bead, limits);
  if (first === null) return none;
  const rest = inOrder(
    open.filter(
      ({ id, probability }) =>
        id !== first.id &&
        (groundOf(id, grounds) !== "evidence" || probability >= limits.besideFirst * first.probability),
    ),
    grounds,
  );
  return { first: first.change, next: withoutContraries(first.id, rest) };
}

/** A change that would leave the number where it is, or too near it to be seen, is none. */
function moves({ fromSi, toSi, chanceOfCure }: Change): boolean {
  return chanceOfCure > 0 && (fromSi === null || toSi === null || fromSi !== toSi);
}

/** More likely than before anything was known, by enough to speak of. */
function hasEvidence({ probability, prior }: RankedCause, limits: AdviceLimits): boolean {
  return (
    probability >= limits.worthTrying && logOdds(probability) - logOdds(prior) >= Math.log(limits.ownEvidence)
  );
}

const inOrder = (causes: readonly RankedCause[], grounds: Grounds): readonly RankedCause[] =>
  [0, 1, 2].flatMap((place) =>
    inOrderOfTrial(causes.filter(({ id }) => rank[groundOf(id, grounds)] === place)),
  );

const firstOf = (causes: readonly RankedCause[], grounds: Grounds): RankedCause | null =>
  inOrder(causes, grounds)[0] ?? null;

/**
 * The likeliest cure, where its cause stands out: likely enough, resting on more than one thing, and clearly ahead of all
 * that call for something else. One mark and nothing more points everywhere, unless it has one cause by its nature. With
 * nothing marked there is nothing to cure, so only a set-up that points at one cause by itself speaks.
 */
function standsOut(
  causes: readonly RankedCause[],
  { marked, enough, supports }: Bead,
  { alone, byNature, faint, lead, leadAlone, withMarks }: AdviceLimits,
): RankedCause | null {
  const [first, ...rest] = causes.toSorted((a, b) => b.change.chanceOfCure - a.change.chanceOfCure);
  if (first === undefined) return null;
  if (marked && first.probability < byNature && (!enough || supports(first.id) < 2)) return null;
  const family = rest.filter(({ id }) => sameFamily(id, first.id));
  const rival = Math.max(
    0,
    ...rest.filter(({ id }) => !sameFamily(id, first.id)).map(({ probability }) => probability),
  );
  const together = family.reduce((sum, { probability }) => sum + probability, first.probability);
  if (!marked) return first.probability >= alone && together >= lead * rival ? first : null;
  if (together >= withMarks) return together >= lead * rival ? first : null;
  return together >= faint && together >= leadAlone * rival ? first : null;
}

function withoutContraries(first: CauseId, rest: readonly RankedCause[]): readonly Change[] {
  const kept: RankedCause[] = [];
  for (const cause of rest) {
    if ([first, ...kept.map(({ id }) => id)].every((id) => !pullApart(id, cause.id))) kept.push(cause);
  }
  return kept.map(({ change }) => change);
}
