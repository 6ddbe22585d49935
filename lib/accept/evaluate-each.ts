import type { Quantity } from "@/lib/measure";
import { missing, type CaseContext } from "./case-context";
import { decide, spreadOf } from "./decide";
import { evaluateFormula } from "./formula";
import { decided, limitOf, outcome, type Outcome } from "./outcome";
import type { SizeName, Test } from "./rule";
import type { Observation } from "./types";

/** The greatest of the sizes that were read; null when none was. */
export function sizeOf(observation: Observation, sizes: readonly SizeName[]): Quantity | null {
  const read = sizes.flatMap((size) => {
    const quantity = observation[`${size}Mm`];
    return quantity === null ? [] : [quantity];
  });
  return read.sort((a, b) => b.value - a.value)[0] ?? null;
}

/** Every observation by itself against the limit; the row shows the worst of them. */
export function evaluateEach(
  test: Extract<Test, { test: "each" }>,
  observations: readonly Observation[],
  context: CaseContext,
): Outcome {
  const range = evaluateFormula(test.limit, context.symbols, context.units);
  const limit = limitOf(test.limit, range, "<=", "mm", context.units);
  const single = observations.map((observation): Outcome => {
    const quantity = sizeOf(observation, test.size);
    const better = [missing(test.size[0]!, observation.id)];
    if (quantity === null)
      return outcome("open", "reading-missing", {
        limit: limit.row,
        missing: better,
        readingsUsed: [observation.id],
      });
    const { value, expandedUncertainty } = quantity;
    const spread = spreadOf(quantity, context.guarded);
    return decided(decide({ low: value, high: value, spread }, "<=", range), limit, {
      value,
      expandedUncertainty,
      readingsUsed: [observation.id],
      better: spread > 0 ? better : [],
    });
  });
  return worstOf(single);
}

const severity = { fails: 0, open: 1, meets: 2, "not-applicable": 3 } as const;

/** Worst first by result, then by margin; an open one without a value stands before one with. */
export function bySeverity(a: Outcome, b: Outcome): number {
  return severity[a.result] - severity[b.result] || (a.margin ?? -Infinity) - (b.margin ?? -Infinity);
}

/** One outcome for several single ones: the worst, with everything read and everything missing. */
export function worstOf(list: readonly Outcome[]): Outcome {
  const worst = [...list].sort((a, b) => bySeverity(a, b) || (b.value ?? 0) - (a.value ?? 0))[0]!;
  return {
    ...worst,
    readingsUsed: [...new Set([...worst.readingsUsed, ...list.flatMap((one) => one.readingsUsed)])],
    missing: worst.result === "open" ? list.flatMap((one) => (one.result === "open" ? one.missing : [])) : [],
  };
}
