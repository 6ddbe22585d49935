import { expanded } from "./expanded";
import { budgetParts, type BudgetPart, type Quantity } from "./types";

/** Errors that differ from reading to reading; the other parts come from one scale and one camera and go together. */
const ownError: ReadonlySet<BudgetPart["part"]> = new Set(["picks", "resolution", "gauge-study"]);

/**
 * Sum of quantities of one unit. Pick and resolution errors add in squares, errors of the shared scale add as they are;
 * a quantity without a budget is taken as one shared error, which is the cautious side.
 * The sum is from the photo as soon as one term is.
 */
export function sumQuantities(list: readonly Quantity[], unit: Quantity["unit"] = "mm"): Quantity {
  const budget = budgetParts.flatMap((part): BudgetPart[] => {
    const entries = list.flatMap((q) => q.budget.filter((entry) => entry.part === part));
    if (entries.length === 0) return [];
    const us = entries.map(({ u }) => u);
    const odds = Math.max(...entries.map((entry) => entry.odds ?? -1));
    return [
      {
        part,
        u: ownError.has(part) ? Math.hypot(...us) : us.reduce((sum, u) => sum + u, 0),
        ...(odds >= 0 ? { odds } : {}),
      },
    ];
  });
  const bare = list.filter((q) => q.budget.length === 0).reduce((sum, q) => sum + q.expandedUncertainty, 0);
  return {
    unit: list[0]?.unit ?? unit,
    value: list.reduce((sum, q) => sum + q.value, 0),
    expandedUncertainty: Math.hypot(expanded(budget), bare),
    source: weakestSource(list),
    budget,
  };
}

/** Difference a - b as a reading: errors taken as independent. */
export function differenceQuantity(a: Quantity, b: Quantity): Quantity {
  return {
    unit: a.unit,
    value: a.value - b.value,
    expandedUncertainty: Math.hypot(a.expandedUncertainty, b.expandedUncertainty),
    source: weakestSource([a, b]),
    budget: [],
  };
}

/** What a combined figure rests on: the photo as soon as one part does, then stated, then gauge. */
export function weakestSource(list: readonly Quantity[]): Quantity["source"] {
  if (list.some(({ source }) => source === "photo")) return "photo";
  return list.some(({ source }) => source === "stated") ? "stated" : "gauge";
}
