import type { Quantity } from "@/lib/measure";
import { decisionFigures } from "./decision-figures";
import type { LimitRange, UnitSystem } from "./formula";
import type { RowLimit, RowResult } from "./verdict";

/** Readings and formulas meet in decimal steps; this much relative rounding is not a difference. */
export const ROUNDING = 1e-9;

/** How near a limit a gauge reading may come. */
export type DecisionRule = "as-read" | "guarded" | "one-sided";

/**
 * How far a reading may be from the truth for the purpose of deciding. A gauge reading or a stated size is taken as it
 * stands (simple acceptance, JCGM 106:2012, 8.2; common practice at the bench); a figure off the photo keeps its guard
 * band (JCGM 106:2012, 8.3). With the other two rules gauges keep theirs too.
 */
export function spreadOf(quantity: Quantity, rule: DecisionRule): number {
  if (rule === "one-sided") return decisionFigures.oneSided * quantity.expandedUncertainty;
  return quantity.source === "photo" || rule === "guarded" ? quantity.expandedUncertainty : 0;
}

export interface Decision {
  readonly result: Extract<RowResult, "meets" | "fails" | "open">;
  /** Open although the limit is known: only a better reading helps. */
  readonly straddles: boolean;
}

/**
 * Compares what the figure may be with what the limit may be. Both at the limit is inside it. Open when any part of the
 * one lies within and any part beyond the other.
 */
export function decide(
  figure: { readonly low: number; readonly high: number; readonly spread: number },
  comparison: "<=" | ">=",
  limit: LimitRange,
): Decision {
  const spread = Math.hypot(figure.spread, limit.spread);
  const finite = (value: number): number => (Number.isFinite(value) ? Math.abs(value) : 0);
  // What was never read may be without bound: its slack must not be.
  const slack = ROUNDING * Math.max(finite(figure.low), finite(figure.high), finite(limit.high));
  const low = figure.low - spread;
  const high = figure.high + spread;
  const meets = comparison === "<=" ? high <= limit.low + slack : low >= limit.high - slack;
  const fails = comparison === "<=" ? low > limit.high + slack : high < limit.low - slack;
  if (meets) return { result: "meets", straddles: false };
  if (fails) return { result: "fails", straddles: false };
  return { result: "open", straddles: limit.unknown.length === 0 };
}

/** The limit for the row; null while a symbol in it is not known. */
export function rowLimit(
  comparison: "<=" | ">=",
  limit: LimitRange,
  unit: RowLimit["unit"],
  formula: string,
): RowLimit | null {
  if (limit.low !== limit.high) return null;
  return { comparison, value: limit.low, unit, expandedUncertainty: limit.spread, formula };
}

export function marginTo(limit: RowLimit | null, value: number | null): number | null {
  if (limit === null || value === null) return null;
  return limit.comparison === "<=" ? limit.value - value : value - limit.value;
}

export function unitsOf(settings: Readonly<Record<string, unknown>>): UnitSystem {
  return settings["units"] === "us" ? "us" : "si";
}
