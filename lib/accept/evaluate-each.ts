import { missing, type CaseContext } from "./case-context";
import { decide, spreadOf } from "./decide";
import { evaluateFormula } from "./formula";
import { decided, limitOf, outcome, type Outcome } from "./outcome";
import { isPatch, sizeOf } from "./size-of";
import { worstOf } from "./worst-of";
import type { Test } from "./rule";
import type { Observation } from "./types";

/** Every observation by itself against the limit; the row shows the worst of them. Of a patch its largest pore counts. */
export function evaluateEach(
  test: Extract<Test, { test: "each" }>,
  observations: readonly Observation[],
  context: CaseContext,
): Outcome {
  const range = evaluateFormula(test.limit, context.symbols, context.units);
  const limit = limitOf(test.limit, range, "<=", "mm", context.units);
  const single = observations.map((observation): Outcome => {
    const patch = isPatch(observation);
    const { quantity, whole, wanted, figures } = sizeOf(observation, patch ? ["diameter"] : test.size);
    const better = [missing(patch ? "largest-pore" : wanted, observation.id)];
    const readingsUsed = [observation.id];
    if (quantity === null)
      return outcome("open", "reading-missing", { limit: limit.row, missing: better, readingsUsed });
    const { value, expandedUncertainty } = quantity;
    const spread = spreadOf(quantity, context.rule);
    const high = whole ? value : Infinity;
    return decided(decide({ low: value, high, spread }, "<=", range), limit, {
      value,
      expandedUncertainty,
      readingsUsed,
      figuresUsed: figures,
      better: spread > 0 || !whole ? better : [],
      incomplete: !whole,
    });
  });
  return worstOf(single);
}
