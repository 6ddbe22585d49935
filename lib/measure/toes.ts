import { fail, issue, ok, type Result } from "@/lib/base";
import { add, dot, fitLine, subtract, times, type FittedLine, type Point } from "@/lib/geometry";
import type { PhotoPoint } from "@/lib/marks";
import { meanPickSigma, pickSigmas } from "./pick-sigma";
import { mapPoints } from "./plane-map";
import { propagate } from "./propagate";
import type { Calibration, MeasureIssue, PlanePoint, Quantity } from "./types";

export interface ToeMeasures {
  /** Mean distance between the toes, square to the axis, mm. */
  readonly width: Quantity;
  readonly widest: Quantity;
  readonly narrowest: Quantity;
  /** Standard deviation of the width over its mean: a ratio without a limit in any code. */
  readonly widthVariation: Quantity;
  /** Root mean square residual of each toe about its own line, mm, pick error taken out. */
  readonly straightness: readonly [Quantity, Quantity];
}

/**
 * Width and straightness of a bead from its two toes, each picked as a line of three or more points in photo pixels.
 * The axis is the line fitted through both toes together. Widths are taken at `stations` places evenly along the stretch
 * that both toes cover.
 *
 * Errors: beyond-horizon when the toes do not face each other anywhere (no common stretch to measure on).
 */
export function measureToes(
  calibration: Calibration,
  toeA: readonly PhotoPoint[],
  toeB: readonly PhotoPoint[],
  stations = 25,
): Result<ToeMeasures, MeasureIssue> {
  const widths = (numbers: readonly number[], map = calibration.map): readonly number[] | null => {
    const all = mapPoints(map, toPoints(numbers));
    return widthSeries(all.slice(0, toeA.length), all.slice(toeA.length), stations);
  };
  const numbers = [...toeA, ...toeB].flatMap(({ x, y }) => [x, y]);
  if (toeA.length < 3 || toeB.length < 3 || widths(numbers) === null)
    return fail(issue("beyond-horizon", ["toes"]));
  const sigmas = pickSigmas(calibration, [...toeA, ...toeB]);
  const figure = (unit: Quantity["unit"], of: (series: readonly number[]) => number): Quantity =>
    propagate(calibration, unit, numbers, sigmas, (map, list) => {
      const series = widths(list, map);
      return series === null ? NaN : of(series);
    });
  return ok({
    width: figure("mm", mean),
    widest: figure("mm", (series) => Math.max(...series)),
    narrowest: figure("mm", (series) => Math.min(...series)),
    widthVariation: figure("ratio", (series) => deviation(series) / mean(series)),
    straightness: [measureStraightness(calibration, toeA), measureStraightness(calibration, toeB)],
  });
}

/**
 * How far a picked edge wanders from its own fitted line: the RMS residual in mm. The picks' own scatter is taken out in
 * squares; with n points and two spent on the line, the squared residual scatters by about 2 s^4 / (n - 2).
 */
export function measureStraightness(calibration: Calibration, edge: readonly PhotoPoint[]): Quantity {
  const points = mapPoints(calibration.map, edge);
  const noise = meanPickSigma(calibration, edge) * calibration.mmPerPx;
  const freedom = Math.max(1, points.length - 2);
  const observed = ((fitLine(points)?.rms ?? 0) ** 2 * points.length) / freedom;
  const square = Math.max(0, observed - noise ** 2);
  const value = Math.sqrt(square);
  const scatter = Math.sqrt((2 * noise ** 4 + 4 * noise ** 2 * square) / freedom);
  // At nought the slope of the root is infinite: the upper end of the square's interval gives the bound instead.
  const upper = Math.sqrt(square + 2 * scatter);
  return {
    unit: "mm",
    value,
    expandedUncertainty: upper - value,
    source: "photo",
    budget: [{ part: "picks", u: (upper - value) / 2 }],
  };
}

/** Distances between the toes square to the common axis; null when they share no stretch. */
export function widthSeries(
  toeA: readonly PlanePoint[],
  toeB: readonly PlanePoint[],
  stations: number,
): readonly number[] | null {
  const axis = fitLine([...toeA, ...toeB]);
  if (axis === null) return null;
  const a = inAxis(toeA, axis);
  const b = inAxis(toeB, axis);
  const from = Math.max(a[0]!.x, b[0]!.x);
  const to = Math.min(a.at(-1)!.x, b.at(-1)!.x);
  if (!(to > from)) return null;
  return Array.from({ length: stations }, (_, i) => {
    const x = from + ((to - from) * (i + 0.5)) / stations;
    return Math.abs(heightAt(a, x) - heightAt(b, x));
  });
}

/** Along the axis and square to it, in order along the axis. */
function inAxis(points: readonly PlanePoint[], axis: FittedLine<"plane">): readonly PlanePoint[] {
  const square = { x: -axis.direction.y, y: axis.direction.x };
  return points
    .map((point) => {
      const from = subtract(point, axis.through);
      return { x: dot(from, axis.direction), y: dot(from, square) };
    })
    .sort((p, q) => p.x - q.x);
}

function heightAt(points: readonly PlanePoint[], x: number): number {
  const after = points.findIndex((point) => point.x >= x);
  const right = points[after === -1 ? points.length - 1 : after]!;
  const left = points[Math.max(0, (after === -1 ? points.length : after) - 1)]!;
  if (right.x === left.x) return (left.y + right.y) / 2;
  const share = (x - left.x) / (right.x - left.x);
  return add(left, times(subtract(right, left), share)).y;
}

function toPoints(numbers: readonly number[]): readonly Point<"photo">[] {
  return Array.from({ length: numbers.length / 2 }, (_, i) => ({
    x: numbers[2 * i]!,
    y: numbers[2 * i + 1]!,
  }));
}

function mean(list: readonly number[]): number {
  return list.reduce((sum, value) => sum + value, 0) / list.length;
}

function deviation(list: readonly number[]): number {
  const middle = mean(list);
  return Math.sqrt(list.reduce((sum, value) => sum + (value - middle) ** 2, 0) / (list.length - 1));
}
