import { sumQuantities, type Quantity } from "@/lib/measure";
import { missing, type CaseContext } from "./case-context";
import { decide, spreadOf } from "./decide";
import { evaluateFormula } from "./formula";
import { decided, limitOf, outcome, type Outcome } from "./outcome";
import { sizeOf } from "./size-of";
import type { Test } from "./rule";
import type { Observation } from "./types";

const heights = ["depth", "height"] as const;

/**
 * Several imperfections in one cross section: the greatest sum of depths and heights anywhere along the weld. Only
 * sections that cut at least two count. An observation without a place may lie in any section.
 */
export function evaluateStack(
  test: Extract<Test, { test: "stack" }>,
  observations: readonly Observation[],
  context: CaseContext,
): Outcome {
  const range = evaluateFormula(test.limit, context.symbols, context.units);
  const limit = limitOf(test.limit, range, "<=", "mm", context.units);
  const sections = sectionsOf(observations).filter((section) => section.length >= 2);
  if (sections.length === 0) return outcome("meets", "none-together", { limit: limit.row });
  const single = sections.map((section) => sumOf(section, context));
  const low = Math.max(...single.map((one) => one.low));
  const high = Math.max(...single.map((one) => one.high));
  const worst = single.reduce((a, b) => (b.sum.value > a.sum.value ? b : a));
  const involved = observations.filter(({ id }) => single.some(({ ids }) => ids.includes(id)));
  const unread = involved.filter((one) => !sizeOf(one, heights).whole);
  return decided(decide({ low, high, spread: 0 }, "<=", range), limit, {
    // A sum of which nothing was read is no nought.
    value: unread.length === involved.length ? null : worst.sum.value,
    expandedUncertainty: worst.sum.expandedUncertainty,
    readingsUsed: worst.ids,
    figuresUsed: involved.flatMap((one) => sizeOf(one, heights).figures),
    better: [
      ...unread.map((one) => missing(sizeOf(one, heights).wanted, one.id)),
      ...involved.filter((one) => one.alongMm === null).map(({ id }) => missing("place-along", id)),
    ],
    incomplete: unread.length > 0,
  });
}

interface SectionSum {
  readonly low: number;
  readonly high: number;
  readonly sum: Quantity;
  readonly ids: readonly string[];
}

/** What surely lies in one section, and what may. */
function sumOf(section: readonly Observation[], context: CaseContext): SectionSum {
  const read = (list: readonly Observation[]): Quantity[] =>
    list.flatMap((one) => sizeOf(one, heights).quantity ?? []);
  const certain = section.filter((one) => one.alongMm !== null);
  const sum = sumQuantities(read(section));
  const least = certain.length >= 2 ? sumQuantities(read(certain)) : sumQuantities([]);
  const whole = section.every((one) => sizeOf(one, heights).whole);
  return {
    sum,
    low: least.value - spreadOf(least, context.rule),
    high: whole ? sum.value + spreadOf(sum, context.rule) : Infinity,
    ids: section.map(({ id }) => id),
  };
}

/** Observations cut by the section through the start of each placed one, with all unplaced ones. */
function sectionsOf(observations: readonly Observation[]): readonly (readonly Observation[])[] {
  const placed = observations.filter((one) => one.alongMm !== null);
  const floating = observations.filter((one) => one.alongMm === null);
  if (placed.length === 0) return [floating];
  const span = (one: Observation): readonly [number, number] => {
    const [a, b] = one.alongMm!;
    return a <= b ? [a, b] : [b, a];
  };
  return placed.map((start) => [
    ...placed.filter((one) => span(one)[0] <= span(start)[0] && span(start)[0] <= span(one)[1]),
    ...floating,
  ]);
}
