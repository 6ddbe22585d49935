import { EigenvalueDecomposition, Matrix } from "ml-matrix";
import { add, dot, fitHomography, fitLine, times, type Point } from "@/lib/geometry";
import type { PhotoPoint } from "@/lib/marks";
import { mapPoints, straighten } from "./plane-map";
import type { ScaleModel } from "./scale-model";
import type { Calibration, PlaneMap, PlanePoint } from "./types";

type Variation = Calibration["variations"][number];

/** Up to this many coordinates each is displaced by itself; beyond it they are gathered into eight. */
const MOST_SINGLE = 16;

/** The map under the error of each picked coordinate of the scale object, one standard deviation to either side. */
export function pickVariations(
  model: ScaleModel,
  map: PlaneMap,
  sigmaOf: (pick: PhotoPoint) => number,
): readonly Variation[] {
  const singles = model.picks.flatMap((pick, index) =>
    (["x", "y"] as const).flatMap((axis): Variation[] => {
      const sigmaPx = sigmaOf(pick);
      if (sigmaPx === 0) return [];
      const plus = model.fit(moved(model.picks, index, axis, sigmaPx), map.lens);
      const minus = model.fit(moved(model.picks, index, axis, -sigmaPx), map.lens);
      return plus.ok && minus.ok ? [{ part: "scale-picks", plus: plus.value, minus: minus.value }] : [];
    }),
  );
  return singles.length <= MOST_SINGLE ? singles : gathered(singles, model.picks, map);
}

function moved(
  points: readonly Point<"photo">[],
  index: number,
  axis: "x" | "y",
  by: number,
): readonly Point<"photo">[] {
  return points.map((point, i) => (i === index ? { ...point, [axis]: point[axis] + by } : point));
}

/**
 * A homography is fixed by where it sends four points: eight numbers. The covariance of those eight, split into its
 * independent directions, carries the error of any number of picks to first order.
 */
function gathered(
  singles: readonly Variation[],
  picks: readonly Point<"photo">[],
  map: PlaneMap,
): readonly Variation[] {
  const frame = boundingCorners(picks);
  const at = coordinates(mapPoints(map, frame));
  const columns = singles.map((single) => {
    const plus = coordinates(mapPoints(single.plus, frame));
    const minus = coordinates(mapPoints(single.minus, frame));
    return plus.map((value, i) => (value - minus[i]!) / 2);
  });
  const jacobian = new Matrix(columns).transpose();
  const split = new EigenvalueDecomposition(jacobian.mmul(jacobian.transpose()), { assumeSymmetric: true });
  return split.realEigenvalues.flatMap((variance, index): Variation[] => {
    if (!(variance > 1e-18)) return [];
    const step = split.eigenvectorMatrix.getColumn(index).map((value) => value * Math.sqrt(variance));
    const side = (sign: 1 | -1): PlaneMap | null => {
      const to = points(at.map((value, i) => value + sign * step[i]!));
      const straight = frame.map((corner) => straighten(map.lens, corner));
      const homography = fitHomography(straight, to);
      return homography === null ? null : { ...map, homography };
    };
    const plus = side(1);
    const minus = side(-1);
    return plus !== null && minus !== null ? [{ part: "scale-picks", plus, minus }] : [];
  });
}

/** A rectangle around the picks, turned with them: a strip that lies askew is not extrapolated into empty corners. */
function boundingCorners(picks: readonly Point<"photo">[]): readonly Point<"photo">[] {
  const axis = fitLine(picks);
  const along = axis?.direction ?? { x: 1, y: 0 };
  const square = { x: -along.y, y: along.x };
  const us = picks.map((pick) => dot(pick, along));
  const vs = picks.map((pick) => dot(pick, square));
  const [left, right, top, bottom] = [Math.min(...us), Math.max(...us), Math.min(...vs), Math.max(...vs)];
  const corner = (u: number, v: number): Point<"photo"> => add(times(along, u), times(square, v));
  return [corner(left, top), corner(right, top), corner(right, bottom), corner(left, bottom)];
}

function coordinates(list: readonly PlanePoint[]): readonly number[] {
  return list.flatMap(({ x, y }) => [x, y]);
}

function points(list: readonly number[]): readonly PlanePoint[] {
  return Array.from({ length: list.length / 2 }, (_, i) => ({ x: list[2 * i]!, y: list[2 * i + 1]! }));
}
