import { adviceLimits, type AdviceLimits } from "@/lib/diagnose/advice/limits";
import { presentTuning } from "@/lib/diagnose/tuning";
import { mean } from "../diagnose/score";
import type { Scenario } from "./scenario";
import { scoreScenario, totalsOf, type JudgedScenario } from "./score-scenario";

/** Limits in coarse steps about the present ones: 3 x 3 x 3 x 2 x 2 = 108; the first is the present table. */
export function limitGrid(present: AdviceLimits = adviceLimits): readonly AdviceLimits[] {
  const { withMarks, lead, byNature, ownEvidence, alone } = present;
  return [withMarks, withMarks - 0.1, withMarks + 0.1].flatMap((marks) =>
    [lead, lead * 0.85, lead * 1.3].flatMap((ahead) =>
      [byNature, byNature - 0.1, byNature + 0.1].flatMap((nature) =>
        [ownEvidence, ownEvidence * 1.7].flatMap((own) =>
          [alone, alone - 0.1].map((bare): AdviceLimits => ({
            ...present,
            withMarks: marks,
            lead: ahead,
            byNature: nature,
            ownEvidence: own,
            alone: bare,
          })),
        ),
      ),
    ),
  );
}

/** FNV-1a over the id, then mixed, because ids are short: the fold follows from the name alone, whatever is added. */
export function foldOf(id: string): 0 | 1 {
  let hash = 0x811c9dc5;
  for (const letter of id) hash = Math.imul(hash ^ letter.charCodeAt(0), 0x01000193);
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return ((hash ^ (hash >>> 16)) & 1) as 0 | 1;
}

/** One dangerous change weighs as much as ten right ones. Own choice. */
function worth(judged: readonly JudgedScenario[]): number {
  const { change, danger } = totalsOf(judged);
  return change.count - 10 * danger.count;
}

export interface FoldResult {
  readonly fitted: readonly JudgedScenario[];
  /** The other fold, once for each of the limits that do equally best on this one. */
  readonly judged: readonly (readonly JudgedScenario[])[];
}

/**
 * The limits fitted on one half of the scenarios and judged on the other, both ways. Many limits do equally well on half
 * the scenarios; picking one of them by its look at the other half would be cheating, so all of them are judged.
 */
export function foldLimits(scenarios: readonly Scenario[], grid = limitGrid()): readonly FoldResult[] {
  const all = grid.map((limits) => scenarios.map((one) => scoreScenario(one, { ...presentTuning, limits })));
  return ([0, 1] as const).map((fold) => {
    const mine = all.map((judged) => judged.filter(({ id }) => foldOf(id) === fold));
    const values = mine.map(worth);
    const best = Math.max(...values);
    return {
      fitted: mine[values.indexOf(best)]!,
      judged: all
        .filter((_, i) => values[i] === best)
        .map((judged) => judged.filter(({ id }) => foldOf(id) !== fold)),
    };
  });
}

/** Right changes as a share, on average over equally good limits; and the worst and best of them. */
export function spreadOf({ judged }: FoldResult) {
  const shares = judged.map((list) => {
    const { change } = totalsOf(list);
    return change.count / change.of;
  });
  const dangers = judged.map((list) => totalsOf(list).danger.count);
  return {
    mean: mean(shares),
    worst: Math.min(...shares),
    best: Math.max(...shares),
    of: totalsOf(judged[0]!).change.of,
    mostDanger: Math.max(...dangers),
  };
}
