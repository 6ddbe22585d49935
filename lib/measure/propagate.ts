import { expanded } from "./expanded";
import { mapPoints } from "./plane-map";
import {
  budgetParts,
  type BudgetPart,
  type Calibration,
  type PlaneMap,
  type PlanePoint,
  type Quantity,
} from "./types";
import type { Point } from "@/lib/geometry";
import type { PhotoPoint } from "@/lib/marks";
import { pickSigmas } from "./pick-sigma";

/** A figure as a function of the map and of the numbers picked. */
export type Figure = (map: PlaneMap, numbers: readonly number[]) => number;

/** Several figures worked out together from the same picks; their units stand beside them. */
export type Figures = (map: PlaneMap, numbers: readonly number[]) => readonly number[];

/**
 * Value and first-order uncertainty of a figure (JCGM 100:2008, 5.1.2): each picked number and each variation of the map
 * is displaced by one standard uncertainty to either side, half the difference is its contribution, and independent
 * contributions add in squares.
 *
 * @param numbers What was picked, in photo pixels, each with its standard deviation in `sigmas`.
 */
export function propagate(
  calibration: Calibration,
  unit: Quantity["unit"],
  numbers: readonly number[],
  sigmas: readonly number[],
  figure: Figure,
): Quantity {
  return propagateAll(calibration, [unit], numbers, sigmas, (map, list) => [figure(map, list)])[0]!;
}

/** The same for many figures that share their picks and most of their work. */
export function propagateAll(
  calibration: Calibration,
  units: readonly Quantity["unit"][],
  numbers: readonly number[],
  sigmas: readonly number[],
  figures: Figures,
): readonly Quantity[] {
  const { map, variations } = calibration;
  const parts: (Pick<BudgetPart, "part" | "odds"> & {
    readonly plus: readonly number[];
    readonly minus: readonly number[];
  })[] = [];
  numbers.forEach((value, index) => {
    const sigma = sigmas[index] ?? 0;
    if (sigma === 0) return;
    const at = (by: number): readonly number[] => figures(map, replaced(numbers, index, value + by));
    parts.push({ part: "picks", plus: at(sigma), minus: at(-sigma) });
  });
  for (const { part, plus, minus, odds } of variations)
    parts.push({
      part,
      plus: figures(plus, numbers),
      minus: figures(minus, numbers),
      ...(odds === undefined ? {} : { odds }),
    });
  const values = figures(map, numbers);
  return units.map((unit, i) =>
    combined(
      unit,
      values[i]!,
      parts.map(({ plus, minus, ...rest }) => ({ ...rest, plus: plus[i]!, minus: minus[i]! })),
    ),
  );
}

function combined(
  unit: Quantity["unit"],
  middle: number,
  parts: readonly (Pick<BudgetPart, "part" | "odds"> & { readonly plus: number; readonly minus: number })[],
): Quantity {
  const squares = new Map<BudgetPart["part"], number>();
  const tosses: BudgetPart[] = [];
  let value = middle;
  for (const { part, plus, minus, odds } of parts) {
    if (odds === undefined) squares.set(part, (squares.get(part) ?? 0) + ((plus - minus) / 2) ** 2);
    // Of two values a and b with odds p and 1 - p the variance is p (1 - p) (a - b)^2, about their own mean: that of the
    // figures, for far from a steep disc the figure of the mean map is another.
    else {
      value = odds * plus + (1 - odds) * minus;
      const u = Math.sqrt(odds * (1 - odds)) * Math.abs(plus - minus);
      if (u > 0) tosses.push({ part, u, odds: Math.min(odds, 1 - odds) });
    }
  }
  const budget = budgetParts.flatMap((part): BudgetPart[] => {
    const square = squares.get(part) ?? 0;
    return square > 0 ? [{ part, u: Math.sqrt(square) }] : tosses.filter((toss) => toss.part === part);
  });
  return { unit, value, expandedUncertainty: expanded(budget), source: "photo", budget };
}

/** The same for a figure of picked points. */
export function propagatePoints(
  calibration: Calibration,
  unit: Quantity["unit"],
  points: readonly PhotoPoint[],
  figure: (points: readonly PlanePoint[]) => number,
): Quantity {
  const numbers = points.flatMap(({ x, y }) => [x, y]);
  const sigmas = pickSigmas(calibration, points);
  return propagate(calibration, unit, numbers, sigmas, (map, list) => figure(mapPoints(map, pointsOf(list))));
}

function pointsOf(numbers: readonly number[]): readonly Point<"photo">[] {
  return Array.from({ length: numbers.length / 2 }, (_, i) => ({
    x: numbers[2 * i]!,
    y: numbers[2 * i + 1]!,
  }));
}

function replaced(list: readonly number[], index: number, value: number): readonly number[] {
  const copy = [...list];
  copy[index] = value;
  return copy;
}
