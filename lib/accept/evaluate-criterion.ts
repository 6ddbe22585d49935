import { beadFigure } from "./bead-figure";
import { candidateVariants } from "./candidate-variants";
import type { CaseContext } from "./case-context";
import { outcome, type Outcome } from "./outcome";
import { rowMaker } from "./row-maker";
import { notLookedFor, runTest } from "./run-test";
import { bySeverity } from "./worst-of";
import type { CriteriaSet, Criterion, Variant } from "./rule";
import type { Observation } from "./types";
import type { MissingReading, RowLimit, VerdictRow } from "./verdict";

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
  const row = rowMaker(criterion, set, notLookedFor(criterion, context), context.units);
  const { candidates, missing: facts, mayNotApply } = candidateVariants(criterion, context);
  const silent =
    (criterion.onlyWhenSeen === true && seen.length === 0) ||
    (criterion.onlyWhenRead === true && seen.length === 0 && !wasRead(candidates[0], context));
  if (candidates.length === 0 || silent)
    return [row(outcome("not-applicable", "does-not-apply"), criterion.variants[0]!, 0)];
  const [first] = candidates;
  const perVariant = candidates.map((variant) =>
    variant.tests.map((test) => runTest(test, criterion, seen, context)),
  );
  if (candidates.length === 1 && !mayNotApply)
    return perVariant[0]!.map((one, index) => row(one, first!, index));
  return undecided(perVariant, candidates, facts, mayNotApply, seen, row);
}

/** Rows where it is not known which of several variants applies. */
function undecided(
  perVariant: readonly (readonly Outcome[])[],
  candidates: readonly Variant[],
  facts: readonly MissingReading[],
  mayNotApply: boolean,
  seen: readonly Observation[],
  row: ReturnType<typeof rowMaker>,
): readonly VerdictRow[] {
  const worst = perVariant.map((list) => [...list].sort(bySeverity)[0]!.result);
  // A look does not settle a figure whose limit is not known: a reading of it might.
  const bySight = candidates.some(({ tests }, i) =>
    tests.some(({ test }, j) => test === "bead" && perVariant[i]![j]!.reason === "none-found"),
  );
  const agreed = worst.every((result) => result === worst[0]) && !bySight ? worst[0]! : null;
  const limits = possibleLimits(perVariant);
  // "Fails" needs certainty that the clause applies at all; "meets" does not.
  if (agreed === "meets" || (agreed === "fails" && !mayNotApply))
    return perVariant[0]!.map((one, index) =>
      // The limit of the first candidate would pass for that of the one that applies, unless they are one.
      limits.length > 1
        ? row({ ...one, limit: null, margin: null }, candidates[0]!, index, limits)
        : row(one, candidates[0]!, index),
    );
  const open = outcome("open", "weld-fact-missing", {
    missing: [...facts, ...perVariant.flat().flatMap((one) => (one.result === "open" ? one.missing : []))],
    readingsUsed: seen.map(({ id }) => id),
    figuresUsed: perVariant.flat().flatMap((one) => one.figuresUsed),
  });
  return [row(open, candidates[0]!, 0, limits)];
}

/** Each limit that may apply, once. */
function possibleLimits(perVariant: readonly (readonly Outcome[])[]): readonly RowLimit[] {
  const limits = perVariant.flatMap(([one]) => (one?.limit ? [one.limit] : []));
  return [...new Map(limits.map((limit) => [`${limit.value} ${limit.formula}`, limit])).values()];
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

function wasRead(variant: Variant | undefined, context: CaseContext): boolean {
  return (variant?.tests ?? []).some(
    (test) => test.test === "bead" && beadFigure(test.figure, context).quantity !== null,
  );
}
