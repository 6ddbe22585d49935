import { needsCheck } from "@/lib/base";
import type { ImperfectionId } from "@/lib/trade";
import { formatQuantity } from "@/lib/units";
import { constantValue, type UnitSystem } from "./formula";
import { onceEach } from "./once-each";
import type { Outcome } from "./outcome";
import type { CriteriaSet, Criterion, Test, Variant } from "./rule";
import type { RowLimit, VerdictRow } from "./verdict";

/** What a clause is about when it has several tests: no two rows of one name. */
export function testTitle(title: string, test: Test | undefined, units: UnitSystem): string {
  if (test === undefined || test.test !== "total") return title;
  const what = test.of === "count" ? "how many" : test.of[0] === "length" ? "total length" : "sum";
  if (test.window === null) return `${title}: ${what} on the whole weld`;
  const mm = constantValue(test.window, units);
  return `${title}: ${what} in any ${formatQuantity("length", mm, units === "us" ? "inch" : "metric")}`;
}

function fields({ lookFor: _, ...rest }: Outcome): Omit<Outcome, "lookFor"> {
  return rest;
}

/** Makes rows of one clause out of what its tests say. */
export function rowMaker(
  criterion: Criterion,
  set: CriteriaSet,
  unlooked: readonly ImperfectionId[],
  units: UnitSystem,
) {
  return (
    one: Outcome,
    variant: Variant,
    index: number,
    limitsPossible: readonly RowLimit[] = [],
  ): VerdictRow => ({
    ruleId: index === 0 ? criterion.id : `${criterion.id}-${index + 1}`,
    title: index === 0 ? criterion.title : testTitle(criterion.title, variant.tests[index], units),
    imperfections: criterion.imperfections,
    clause: variant.source.clause ?? criterion.clause,
    edition: set.edition,
    ...fields(one),
    limitsPossible,
    missing: onceEach(one.missing),
    notLookedFor: one.reason === "not-looked-for" ? unlooked : one.lookFor,
    source: variant.source,
    checkYourCopy: needsCheck(variant.source),
  });
}
