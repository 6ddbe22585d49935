import { imperfectionIds, type ImperfectionId } from "@/lib/trade";
import { shareOf, type Share } from "@/lib/trends";
import type { EyeScore } from "./score-bead";

/** How somebody sees one kind. */
export interface KindRates {
  readonly kind: ImperfectionId;
  /** Found, of the beads it was on. */
  readonly hits: Share;
  /** Called where it was not, of the beads it was not on. */
  readonly falseCalls: Share;
}

const present = ({ found, missed, misnamed }: EyeScore): ReadonlySet<ImperfectionId> =>
  new Set([...found, ...missed, ...misnamed.map(({ is }) => is)]);

const called = ({ falseCalls, misnamed }: EyeScore): ReadonlySet<ImperfectionId> =>
  new Set([...falseCalls, ...misnamed.map(({ called: name }) => name)]);

/** Hit and false-call rates of each kind that was there or was called, most often there first; beads are what is counted. */
export function ratesByKind(scores: readonly EyeScore[]): readonly KindRates[] {
  return imperfectionIds
    .map((kind) => {
      const on = scores.filter((score) => present(score).has(kind));
      const off = scores.filter((score) => !present(score).has(kind));
      return {
        kind,
        hits: shareOf(on.filter(({ found }) => found.includes(kind)).length, on.length),
        falseCalls: shareOf(off.filter((score) => called(score).has(kind)).length, off.length),
      };
    })
    .filter(({ hits, falseCalls }) => hits.of > 0 || falseCalls.count > 0)
    .toSorted((a, b) => b.hits.of - a.hits.of);
}

export interface EyeTotals {
  readonly found: number;
  readonly missed: number;
  readonly misnamed: number;
  readonly falseCalls: number;
  readonly missized: number;
}

/** What was found, missed, named wrongly, seen where nothing is and sized wrongly, over all beads. */
export function eyeTotals(scores: readonly EyeScore[]): EyeTotals {
  const total = (of: keyof EyeScore): number => scores.reduce((sum, score) => sum + score[of].length, 0);
  return {
    found: total("found"),
    missed: total("missed"),
    misnamed: total("misnamed"),
    falseCalls: total("falseCalls"),
    missized: total("missized"),
  };
}
