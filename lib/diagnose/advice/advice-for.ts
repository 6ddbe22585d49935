import type { CauseId } from "../cause-ids";
import { inspectorFirst } from "../cautions";
import { explainable } from "../causeless";
import { contrariesIn, hangs } from "../evidence";
import type { DiagnoseInput } from "../input";
import type { Ranking } from "../rank-causes";
import type { ReadingContext } from "../reading";
import { clearedIn, forbiddenIn, readsLow } from "../readings/facts";
import { hotter } from "../tables/knobs";
import type { Change, Contradiction } from "../types";
import { advise } from "./advise";
import { groundsOf } from "./grounds";
import type { AdviceLimits } from "./limits";
import { knownEnough, supportsOf } from "./supports";

/** The changes for a bead, the one to try first at the head; `stopped`: an inspector sees it before any of them. */
export function adviceFor(
  input: DiagnoseInput,
  context: ReadingContext,
  { causes, model, items }: Ranking,
  contradictions: readonly Contradiction[],
  limits: AdviceLimits,
): { readonly stopped: boolean; readonly changes: readonly Change[] } {
  const grounds = groundsOf(input, contradictions, clearedIn(context.facts));
  const bead = {
    marked: explainable(input).length > 0,
    enough: knownEnough(input),
    contrary: wouldHarm(input, context),
    supports: supportsOf(model, items),
  };
  const { first, next } = advise(causes, grounds, bead, limits);
  return {
    stopped: inspectorFirst(input).length > 0,
    changes: first === null ? [] : [first, ...next],
  };
}

/**
 * Causes whose cure would make this bead worse: the marks show the opposite, the plate forbids it, or the pool hangs and
 * nothing reads low.
 */
function wouldHarm(input: DiagnoseInput, { setup, electrode, facts }: ReadingContext): ReadonlySet<CauseId> {
  return new Set([
    ...contrariesIn(input, electrode).map(({ cause }) => cause),
    ...forbiddenIn(setup, facts),
    ...(hangs(input, electrode) && !readsLow(facts) ? hotter : []),
  ]);
}
