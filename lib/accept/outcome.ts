import type { LimitRange, UnitSystem } from "./formula";
import { formulaText } from "./formula";
import { decisionFigures } from "./decision-figures";
import { marginTo, rowLimit, type Decision } from "./decide";
import { missingSymbols } from "./case-context";
import type { Formula } from "./rule";
import type { ImperfectionId } from "@/lib/trade";
import type { MissingReading, RowLimit, RowReason, RowResult } from "./verdict";

/** What one test says, before it becomes a row with its clause and source. */
export interface Outcome {
  readonly result: RowResult;
  readonly reason: RowReason;
  readonly limit: RowLimit | null;
  readonly value: number | null;
  readonly expandedUncertainty: number | null;
  readonly margin: number | null;
  readonly readingsUsed: readonly string[];
  readonly figuresUsed: readonly string[];
  readonly coarse: boolean;
  readonly missing: readonly MissingReading[];
  /** A look for these would settle it as well. */
  readonly lookFor: readonly ImperfectionId[];
}

export function outcome(
  result: RowResult,
  reason: RowReason,
  rest: Partial<Omit<Outcome, "result" | "reason" | "margin" | "coarse">> = {},
): Outcome {
  const limit = rest.limit ?? null;
  const value = rest.value ?? null;
  const U = rest.expandedUncertainty ?? 0;
  return {
    result,
    reason,
    limit,
    value,
    expandedUncertainty: rest.expandedUncertainty ?? null,
    margin: marginTo(limit, value),
    readingsUsed: rest.readingsUsed ?? [],
    figuresUsed: rest.figuresUsed ?? [],
    // Where nothing at all is allowed, a third of nothing says nothing.
    coarse:
      limit !== null &&
      limit.value > 0 &&
      limit.unit !== "count" &&
      U > decisionFigures.coarseShare * limit.value,
    missing: rest.missing ?? [],
    lookFor: rest.lookFor ?? [],
  };
}

export interface LimitOf {
  readonly range: LimitRange;
  readonly row: RowLimit | null;
}

export function limitOf(
  formula: Formula,
  range: LimitRange,
  comparison: "<=" | ">=",
  unit: RowLimit["unit"],
  units: UnitSystem,
): LimitOf {
  return { range, row: rowLimit(comparison, range, unit, formulaText(formula, units)) };
}

/** Words the decision: why it is open, and what would settle it. */
export function decided(
  decision: Decision,
  limit: LimitOf,
  figure: {
    readonly value: number | null;
    readonly expandedUncertainty: number | null;
    readonly readingsUsed: readonly string[];
    readonly figuresUsed?: readonly string[];
    /** Readings that would replace or complete the figure. */
    readonly better: readonly MissingReading[];
    /** Part of the figure was never read. */
    readonly incomplete?: boolean;
    readonly lookFor?: readonly ImperfectionId[];
  },
): Outcome {
  const { value, expandedUncertainty, readingsUsed, figuresUsed = [], better, incomplete = false } = figure;
  const rest = { limit: limit.row, value, expandedUncertainty, readingsUsed, figuresUsed };
  if (decision.result === "meets") return outcome("meets", "within-limit", rest);
  if (decision.result === "fails") return outcome("fails", "over-limit", rest);
  const lacks = missingSymbols(limit.range.unknown);
  const reason: RowReason = incomplete
    ? "reading-missing"
    : lacks.length > 0
      ? "weld-fact-missing"
      : "straddles-limit";
  return outcome("open", reason, {
    ...rest,
    missing: [...lacks, ...better],
    lookFor: figure.lookFor ?? [],
  });
}
