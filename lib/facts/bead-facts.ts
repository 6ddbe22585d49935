import type { Verdict } from "@/lib/accept";
import type { Assessed, BeadContent, Outcome, PhotoFacts } from "@/lib/assess";
import { countedBead } from "@/lib/course";
import { judgedCells, type JudgedCells } from "@/lib/exchange";
import { beadCard, type BeadCard } from "@/lib/report";
import { filterableFields, type FilterableField, type RunSetup } from "@/lib/setup";
import type { ImperfectionId } from "@/lib/trade";
import { beadWords } from "./bead-words";
import { foldText, welderKey } from "./fold";
import { placeOf } from "./place";

/**
 * Raised by hand when this program works a bead's facts out differently without a table having changed: every row there is
 * counts as stale then and is worked out again.
 */
export const FACTS_VERSION = 5;

/** A stored bead, as far as its facts go. */
export interface FactBead {
  readonly number: number;
  /** ISO 8601, UTC. */
  readonly createdAt: string;
  readonly content: BeadContent;
  readonly photos: readonly PhotoFacts[];
}

/** An imperfection marked on a bead, how often, and which kind it is in order of first mark. */
export interface FoundFact {
  readonly imperfection: ImperfectionId;
  readonly count: number;
  readonly rank: number;
}

/** What is kept as one value beside the columns: what lists, class pages and tables say of a bead. */
export interface KeptCard extends BeadCard {
  readonly lookedFor: readonly ImperfectionId[];
  /** Likeliest cause where there is something to explain, as a class is counted by. */
  readonly cause: { readonly id: string; readonly name: string } | null;
  readonly judged: JudgedCells;
}

/** Everything a bead is asked by. Unknown is null. */
export interface BeadFacts {
  readonly place: string;
  /** Calendar day in UTC. */
  readonly day: string;
  readonly titleKey: string;
  readonly welder: string | null;
  readonly welderKey: string;
  readonly setup: Pick<RunSetup, FilterableField>;
  readonly thicknessMm: number | null;
  readonly criteriaId: string | null;
  readonly verdict: Verdict["verdict"] | null;
  readonly triedCause: string | null;
  readonly outcome: Outcome | null;
  readonly firstCause: string | null;
  readonly photos: number;
  readonly marks: number;
  readonly found: readonly FoundFact[];
  readonly words: string;
  readonly card: KeptCard;
}

/**
 * `welder`: identification or name of the person who ran it; null where none is kept, and the sheet's own word stands.
 * `atMs`: `createdAt` in milliseconds since 1970.
 */
export function beadFacts(
  bead: Assessed<FactBead>,
  { welder, atMs }: { readonly welder: string | null; readonly atMs: number },
): BeadFacts {
  const { content, createdAt, number, photos } = bead;
  const { setup, judgement } = content;
  const counted = countedBead(bead);
  const who = welder ?? content.welder;
  return {
    place: placeOf(atMs, number),
    day: createdAt.slice(0, 10),
    titleKey: foldText(content.title),
    welder: who,
    welderKey: welderKey(who),
    setup: Object.fromEntries(filterableFields.map((field) => [field, setup[field]])) as BeadFacts["setup"],
    thicknessMm: setup.thicknessMm,
    criteriaId: judgement.criteriaId,
    verdict: counted.verdict,
    triedCause: judgement.tried?.causeId ?? null,
    outcome: judgement.outcome,
    firstCause: counted.cause?.id ?? null,
    photos: photos.length,
    marks: counted.imperfections.length,
    found: foundFacts(counted.imperfections),
    words: beadWords(content, who),
    card: {
      ...beadCard(bead),
      lookedFor: judgement.lookedFor,
      cause: counted.cause,
      judged: judgedCells(bead),
    },
  };
}

function foundFacts(marked: readonly ImperfectionId[]): readonly FoundFact[] {
  const counts = new Map<ImperfectionId, number>();
  for (const id of marked) counts.set(id, (counts.get(id) ?? 0) + 1);
  return [...counts].map(([imperfection, count], rank) => ({ imperfection, count, rank }));
}
