import type { CaseContext } from "./case-context";
import { applicability } from "./conditions";
import type { Criterion, Variant } from "./rule";
import type { MissingReading } from "./verdict";

export interface Candidates {
  readonly candidates: readonly Variant[];
  readonly missing: readonly MissingReading[];
  /** Every variant seen so far may turn out not to apply, and none after them surely does. */
  readonly mayNotApply: boolean;
}

/** Variants in order, up to and including the first that surely applies. */
export function candidateVariants(criterion: Criterion, context: CaseContext): Candidates {
  const candidates: Variant[] = [];
  const lacks: MissingReading[] = [];
  for (const variant of criterion.variants) {
    const { applies, missing: unknown } = applicability(variant.when, context);
    if (applies === false) continue;
    candidates.push(variant);
    if (applies === true) return { candidates, missing: lacks, mayNotApply: false };
    lacks.push(...unknown);
  }
  return { candidates, missing: lacks, mayNotApply: candidates.length > 0 };
}
