import type { CriteriaSet, Formula, Variant } from "./rule";
import type { WeldKind } from "./types";
import { weldFactNames, type WeldFactName } from "./weld-fact-names";

/** For each kind of weld the facts that a rule of this set could ask for, in the order of `weldFactNames`. */
export function weldFactsAsked(set: CriteriaSet): Readonly<Record<WeldKind, readonly WeldFactName[]>> {
  const variants = set.criteria.flatMap((criterion) => criterion.variants);
  const of = (kind: WeldKind): readonly WeldFactName[] => {
    const names = new Set(variants.filter((one) => mayApply(one, kind)).flatMap(factsOf));
    return weldFactNames.filter((name) => names.has(name));
  };
  return { fillet: of("fillet"), butt: of("butt"), surfacing: of("surfacing") };
}

function mayApply({ when }: Variant, kind: WeldKind): boolean {
  return when.every((condition) => !("kind" in condition) || condition.kind.includes(kind));
}

function factsOf({ when, tests }: Variant): readonly WeldFactName[] {
  const conditions = when.flatMap((condition): WeldFactName[] => {
    if ("flag" in condition) return [condition.flag];
    if ("seam" in condition) return ["seam"];
    return "symbol" in condition && condition.symbol === "r" ? ["rootWidthMm"] : [];
  });
  const limits = tests.flatMap((test): WeldFactName[] => [
    ...("limit" in test && usesRootWidth(test.limit) ? (["rootWidthMm"] as const) : []),
    // A window may lie across the closing point of a weld that goes round.
    ...("window" in test && test.window !== null ? (["closed"] as const) : []),
  ]);
  return [...conditions, ...limits];
}

function usesRootWidth(formula: Formula): boolean {
  if (typeof formula === "number") return false;
  if ("times" in formula) return formula.of === "r";
  if ("sum" in formula) return formula.sum.some(usesRootWidth);
  if ("min" in formula) return formula.min.some(usesRootWidth);
  return "max" in formula && formula.max.some(usesRootWidth);
}
