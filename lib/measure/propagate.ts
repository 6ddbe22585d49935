import { expanded } from "./expanded";
import { mapPoint, mapPoints } from "./plane-map";
import {
  budgetParts,
  type BudgetPart,
  type Calibration,
  type PlaneMap,
  type PlanePoint,
  type Quantity,
} from "./types";
import type { OneMoved, Point } from "@/lib/geometry";
import type { PhotoPoint } from "@/lib/marks";
import { pickSigma } from "./pick-sigma";

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
  const { map } = calibration;
  const parts: Part<readonly number[]>[] = [];
  numbers.forEach((value, index) => {
    const sigma = sigmas[index] ?? 0;
    if (sigma === 0) return;
    const at = (by: number): readonly number[] => figures(map, numbers.with(index, value + by));
    parts.push({ part: "picks", plus: at(sigma), minus: at(-sigma) });
  });
  parts.push(...ofVariations(calibration, (varied) => figures(varied, numbers)));
  const values = figures(map, numbers);
  return units.map((unit, i) =>
    combined(
      unit,
      values[i]!,
      parts.map(({ plus, minus, ...rest }) => ({ ...rest, plus: plus[i]!, minus: minus[i]! })),
    ),
  );
}

/** What one error makes of a figure, to either side. */
type Part<T> = Pick<BudgetPart, "part" | "odds"> & { readonly plus: T; readonly minus: T };

function ofVariations<T>({ variations }: Calibration, figure: (map: PlaneMap) => T): readonly Part<T>[] {
  return variations.map(({ part, plus, minus, odds }) => ({
    part,
    plus: figure(plus),
    minus: figure(minus),
    ...(odds === undefined ? {} : { odds }),
  }));
}

function combined(unit: Quantity["unit"], middle: number, parts: readonly Part<number>[]): Quantity {
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

/**
 * The same for a figure of picked points. Each pick displaces one point: the figure says what that changes, so that the
 * cost of a thousand displacements is not that of a thousand figures.
 */
export function propagatePoints(
  calibration: Calibration,
  unit: Quantity["unit"],
  points: readonly PhotoPoint[],
  figure: (points: readonly PlanePoint[]) => OneMoved<"plane">,
): Quantity {
  const { map } = calibration;
  const { value, at } = figure(mapPoints(map, points));
  const picks = points.flatMap((point, index): Part<number>[] => {
    const sigma = pickSigma(calibration, point);
    const { x, y } = point;
    const side = (to: Point<"photo">): number => at(index, mapPoint(map, to));
    const moved = (dx: number, dy: number): Part<number> => ({
      part: "picks",
      plus: side({ x: x + dx, y: y + dy }),
      minus: side({ x: x - dx, y: y - dy }),
    });
    return sigma === 0 ? [] : [moved(sigma, 0), moved(0, sigma)];
  });
  const others = ofVariations(calibration, (varied) => figure(mapPoints(varied, points)).value);
  return combined(unit, value, [...picks, ...others]);
}
