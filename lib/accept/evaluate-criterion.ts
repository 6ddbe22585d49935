import type { ImperfectionId } from "@/lib/trade";
import { needsCheck } from "@/lib/base";
import { beadFigure } from "./bead-figure";
import { missing, type CaseContext } from "./case-context";
import { applicability } from "./conditions";
import { spreadOf } from "./decide";
import { bySeverity, evaluateEach } from "./evaluate-each";
import { evaluateBead } from "./evaluate-bead";
import { evaluateStack } from "./evaluate-stack";
import { evaluateTotal } from "./evaluate-total";
import { evaluateFormula } from "./formula";
import { onceEach } from "./once-each";
import { limitOf, outcome, type Outcome } from "./outcome";
import type { CriteriaSet, Criterion, Test, Variant } from "./rule";
import type { Observation } from "./types";
import type { MissingReading, VerdictRow } from "./verdict";

/**
 * One clause applied to one weld: a row for each of its tests. Where it is not known which variant applies, the clause
 * is decided only if every variant that may apply decides it the same way.
 */
export function evaluateCriterion(
  criterion: Criterion,
  set: CriteriaSet,
  context: CaseContext,
): readonly VerdictRow[] {
  const seen = observationsFor(criterion, context.input.observations);
  const row = rowMaker(criterion, set, notLookedFor(criterion, context));
  const { candidates, missing: facts, mayNotApply } = candidateVariants(criterion, context);
  const silent =
    (criterion.onlyWhenSeen === true && seen.length === 0) ||
    (criterion.onlyWhenRead === true && seen.length === 0 && !wasRead(candidates[0], context));
  if (candidates.length === 0 || silent)
    return [row(outcome("not-applicable", "does-not-apply"), criterion.variants[0]!, 0)];

  const perVariant = candidates.map((variant) =>
    variant.tests.map((test) => runTest(test, criterion, seen, context)),
  );
  const [first] = candidates;
  const worst = perVariant.map((list) => [...list].sort(bySeverity)[0]!.result);
  if (candidates.length === 1 && !mayNotApply)
    return perVariant[0]!.map((one, index) => row(one, first!, index));
  const agreed = worst.every((result) => result === worst[0]) ? worst[0]! : null;
  // "Fails" needs certainty that the clause applies at all; "meets" does not.
  if (agreed === "meets" || (agreed === "fails" && !mayNotApply))
    return perVariant[0]!.map((one, index) =>
      // Figures of the first candidate would pass for those of the one that applies.
      row({ ...one, limit: null, margin: null }, first!, index),
    );
  const open = outcome("open", "weld-fact-missing", {
    missing: facts,
    readingsUsed: seen.map(({ id }) => id),
  });
  return [row(open, first!, 0)];
}

/** The observations a criterion is about. What is not said to lie at the root is judged as lying on the face. */
export function observationsFor(
  criterion: Criterion,
  observations: readonly Observation[],
): readonly Observation[] {
  const { only, not } = criterion.places ?? {};
  return observations.filter(({ imperfection, place }) => {
    if (!criterion.imperfections.includes(imperfection)) return false;
    if (place === null) return only === undefined;
    return (only === undefined || only.includes(place)) && (not === undefined || !not.includes(place));
  });
}

/** Neither marked anywhere nor ticked as absent. */
function notLookedFor(criterion: Criterion, { input }: CaseContext): readonly ImperfectionId[] {
  if (criterion.onlyWhenSeen === true) return [];
  return criterion.imperfections.filter(
    (id) => !input.lookedFor.includes(id) && !input.observations.some((one) => one.imperfection === id),
  );
}

interface Candidates {
  readonly candidates: readonly Variant[];
  readonly missing: readonly MissingReading[];
  /** Every variant seen so far may turn out not to apply, and none after them surely does. */
  readonly mayNotApply: boolean;
}

/** Variants in order, up to and including the first that surely applies. */
function candidateVariants(criterion: Criterion, context: CaseContext): Candidates {
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

function wasRead(variant: Variant | undefined, context: CaseContext): boolean {
  return (variant?.tests ?? []).some(
    (test) => test.test === "bead" && beadFigure(test.figure, context).quantity !== null,
  );
}

function runTest(
  test: Test,
  criterion: Criterion,
  seen: readonly Observation[],
  context: CaseContext,
): Outcome {
  if (test.test === "bead") return evaluateBead(test, seen, criterion.imperfections, context);
  if (test.test === "allowed") return outcome("meets", "allowed", { readingsUsed: ids(seen) });
  const unlooked = notLookedFor(criterion, context);
  if (seen.length === 0) {
    if (test.test === "total" && test.unless !== undefined)
      return settledByFigure(test, test.unless, unlooked.length === 0, context);
    return unlooked.length > 0 ? notLooked() : outcome("meets", "none-found");
  }
  const found = testSeen(test, seen, context);
  return found.result === "meets" && unlooked.length > 0 ? { ...found, ...openForLooking } : found;
}

const openForLooking = {
  result: "open",
  reason: "not-looked-for",
  missing: [missing("look")],
} as const;

function notLooked(): Outcome {
  return outcome("open", "not-looked-for", { missing: [missing("look")] });
}

function testSeen(
  test: Exclude<Test, { test: "bead" } | { test: "allowed" }>,
  seen: readonly Observation[],
  context: CaseContext,
): Outcome {
  switch (test.test) {
    case "none-allowed":
      return outcome("fails", "none-allowed", {
        limit: { comparison: "<=", value: 0, unit: "count", expandedUncertainty: 0, formula: "0" },
        value: seen.length,
        expandedUncertainty: 0,
        readingsUsed: ids(seen),
      });
    case "person-decides":
      return outcome("open", "qualified-person-decides", {
        readingsUsed: ids(seen),
        missing: seen.map(({ id }) => missing("look", id)),
      });
    case "each":
      return evaluateEach(test, seen, context);
    case "total":
      return evaluateTotal(test, seen, context);
    case "stack":
      return evaluateStack(test, seen, context);
  }
}

/** Nothing was marked: is there nothing, or was it only not marked? The figure of the bead tells. */
function settledByFigure(
  test: Extract<Test, { test: "total" }>,
  figureName: NonNullable<typeof test.unless>,
  looked: boolean,
  context: CaseContext,
): Outcome {
  const range = evaluateFormula(test.limit, context.symbols, context.units);
  const limit = limitOf(test.limit, range, "<=", "mm", context.units).row;
  const figure = beadFigure(figureName, context);
  if (figure.quantity === null)
    return looked
      ? outcome("meets", "none-found", { limit })
      : outcome("open", "reading-missing", { limit, missing: figure.missing });
  const spread = spreadOf(figure.quantity, context.guarded);
  if (figure.quantity.value + spread <= 1e-9)
    return outcome("meets", "none-found", { limit, value: 0, readingsUsed: figure.used });
  return outcome("open", "reading-missing", {
    limit,
    readingsUsed: figure.used,
    missing: [missing("undersize-length")],
  });
}

function ids(observations: readonly Observation[]): readonly string[] {
  return observations.map(({ id }) => id);
}

function rowMaker(criterion: Criterion, set: CriteriaSet, unlooked: readonly ImperfectionId[]) {
  return (one: Outcome, variant: Variant, index: number): VerdictRow => ({
    ruleId: index === 0 ? criterion.id : `${criterion.id}-${index + 1}`,
    title: criterion.title,
    imperfections: criterion.imperfections,
    clause: variant.source.clause ?? criterion.clause,
    edition: set.edition,
    ...one,
    missing: onceEach(one.missing),
    notLookedFor: one.reason === "not-looked-for" ? unlooked : [],
    source: variant.source,
    checkYourCopy: needsCheck(variant.source),
  });
}
