import { beadFigure } from "./bead-figure";
import { missing, type CaseContext } from "./case-context";
import { spreadOf } from "./decide";
import { evaluateBead } from "./evaluate-bead";
import { evaluateEach } from "./evaluate-each";
import { evaluateStack } from "./evaluate-stack";
import { evaluateTotal } from "./evaluate-total";
import { constantValue, evaluateFormula } from "./formula";
import { limitOf, outcome, type Outcome } from "./outcome";
import type { BeadFigure, Criterion, Test } from "./rule";
import type { Observation } from "./types";
import type { ImperfectionId } from "@/lib/trade";

/** One test of a clause on what was seen of it. */
export function runTest(
  test: Test,
  criterion: Criterion,
  seen: readonly Observation[],
  context: CaseContext,
): Outcome {
  const found = tested(test, criterion, seen, context);
  return found.result === "fails" && "beyond" in test && test.beyond === "person-decides"
    ? { ...found, result: "open", reason: "qualified-person-decides" }
    : found;
}

function tested(
  test: Test,
  criterion: Criterion,
  seen: readonly Observation[],
  context: CaseContext,
): Outcome {
  if (test.test === "bead") return evaluateBead(test, seen, criterion.imperfections, context);
  if (test.test === "figure-by-person") return figureByPerson(test.figure, criterion, seen, context);
  if (test.test === "allowed") return outcome("meets", "allowed", { readingsUsed: ids(seen) });
  const unlooked = notLookedFor(criterion, context);
  if (seen.length === 0) {
    if (test.test === "total" && test.unless !== undefined)
      return settledByFigure(test, test.unless, unlooked.length === 0, criterion, context);
    return unlooked.length > 0 ? notLooked() : outcome("meets", "none-found");
  }
  const found = testSeen(test, seen, context);
  return found.result === "meets" && unlooked.length > 0 ? { ...found, ...openForLooking } : found;
}

/** Neither marked anywhere nor ticked as absent. */
export function notLookedFor(criterion: Criterion, { input }: CaseContext): readonly ImperfectionId[] {
  if (criterion.onlyWhenSeen === true) return [];
  return criterion.imperfections.filter(
    (id) => !input.lookedFor.includes(id) && !input.observations.some((one) => one.imperfection === id),
  );
}

/** A figure without a number: whoever reads more than nought of it, or marks it, leaves it to a person. */
function figureByPerson(
  figure: BeadFigure,
  criterion: Criterion,
  seen: readonly Observation[],
  context: CaseContext,
): Outcome {
  const { quantity, used, missing: lacks } = beadFigure(figure, context);
  const isNought = quantity !== null && quantity.value + spreadOf(quantity, context.rule) <= ROUNDING_MM;
  if (seen.length === 0 && isNought)
    return outcome("meets", "none-found", { value: 0, readingsUsed: used, figuresUsed: used });
  if (seen.length === 0 && quantity === null)
    return notLookedFor(criterion, context).length > 0
      ? outcome("open", "reading-missing", { missing: lacks, lookFor: criterion.imperfections })
      : outcome("meets", "none-found");
  return outcome("open", "qualified-person-decides", {
    value: quantity?.value ?? null,
    expandedUncertainty: quantity?.expandedUncertainty ?? null,
    readingsUsed: [...used, ...ids(seen)],
    figuresUsed: used,
    missing: [missing("look")],
  });
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
  test: Exclude<Test, { test: "bead" } | { test: "allowed" } | { test: "figure-by-person" }>,
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

/**
 * Nothing was marked: is there nothing, or was it only not marked? The figure of the bead tells. It holds along the
 * whole bead, so a bead that is short by it is short for its whole length; a shorter stretch is marked with its length.
 */
function settledByFigure(
  test: Extract<Test, { test: "total" }>,
  figureName: NonNullable<typeof test.unless>,
  looked: boolean,
  criterion: Criterion,
  context: CaseContext,
): Outcome {
  const range = evaluateFormula(test.limit, context.symbols, context.units);
  const limit = limitOf(test.limit, range, "<=", "mm", context.units).row;
  const gapOver = gapOf(criterion, figureName, context);
  const { quantity, otherwise, whole, used, missing: lacks } = beadFigure(figureName, context, gapOver);
  if (quantity === null)
    return looked
      ? outcome("meets", "none-found", { limit })
      : outcome("open", "reading-missing", { limit, missing: lacks });
  const rest = { limit, readingsUsed: used, figuresUsed: used };
  const least = quantity.value - spreadOf(quantity, context.rule);
  const most =
    Math.max(quantity.value, otherwise?.value ?? quantity.value) + spreadOf(quantity, context.rule);
  if (least > ROUNDING_MM)
    return outcome("fails", "over-limit", {
      ...rest,
      value: context.input.weld.lengthMm,
      missing: [missing("undersize-length")],
    });
  if (otherwise !== null && quantity.value <= ROUNDING_MM && otherwise.value > ROUNDING_MM)
    return outcome("open", "readings-disagree", {
      ...rest,
      missing: [missing("throat"), missing("convexity")],
    });
  if (most <= ROUNDING_MM && whole) return outcome("meets", "none-found", { ...rest, value: 0 });
  return outcome("open", "reading-missing", {
    ...rest,
    missing: whole ? [missing("undersize-length")] : lacks,
  });
}

/** The gap that the clause takes off the figure, as its own test of that figure says. */
function gapOf(criterion: Criterion, figure: BeadFigure, { units }: CaseContext): number | null {
  const tests = criterion.variants.flatMap((variant) => variant.tests);
  const own = tests.find((test) => test.test === "bead" && test.figure === figure);
  const gap = own?.test === "bead" ? own.lessGapOver : undefined;
  return gap === undefined ? null : constantValue(gap, units);
}

/** Legs and throats differ by rounding alone below this. */
const ROUNDING_MM = 1e-9;

function ids(observations: readonly Observation[]): readonly string[] {
  return observations.map(({ id }) => id);
}
