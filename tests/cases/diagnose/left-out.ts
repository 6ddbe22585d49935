import { presentTuning, type Weights } from "@/lib/diagnose/tuning";
import { mean, scoreCase, type PublishedCase, type ScoredRow } from "./score";
import { weightGrid } from "./weight-grid";

/** What all cases come to under each weights of a grid. */
export interface Fitting {
  readonly grid: readonly Weights[];
  /** Per weights, the cases in their order. */
  readonly rows: readonly (readonly ScoredRow[])[];
}

export function runGrid(cases: readonly PublishedCase[], grid = weightGrid()): Fitting {
  return {
    grid,
    rows: grid.map((weights) => cases.map((one) => scoreCase(one, { ...presentTuning, weights }))),
  };
}

/** What a fit goes by; more is better. */
export const aims = {
  /** The log score of the stated probabilities. */
  "by log score": (rows: readonly ScoredRow[]) => mean(rows.map(({ logScore }) => logScore)),
  /** Most first places, and the log score only between equals. */
  "by first places": (rows: readonly ScoredRow[]) =>
    rows.filter(({ toolRank }) => toolRank === 1).length + mean(rows.map(({ logScore }) => logScore)) * 1e-6,
} as const;
export type Aim = keyof typeof aims;

/** Place in the grid of the weights that do best on the cases a filter lets through; the earlier of equals. */
export function bestOn({ rows }: Fitting, aim: Aim, used: (row: ScoredRow) => boolean = () => true): number {
  const worth = rows.map((list) => aims[aim](list.filter(used)));
  return worth.indexOf(Math.max(...worth));
}

/** Each case under the weights that were fitted without any case of its source. */
export function leaveOneSourceOut(fitting: Fitting, aim: Aim) {
  const sources = [...new Set(fitting.rows[0]!.map(({ source }) => source))];
  const fits = new Map(
    sources.map((source) => [source, bestOn(fitting, aim, (row) => row.source !== source)] as const),
  );
  return {
    rows: fitting.rows[0]!.map(({ source }, i) => fitting.rows[fits.get(source)!]![i]!),
    /** How many different weights the fits chose: one means that no single source moves them. */
    chosen: new Set(fits.values()).size,
    sources: sources.length,
  };
}
