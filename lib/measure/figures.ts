import { angleDeg, areaMoved, extentMoved, polylineMoved, wholeAgain } from "@/lib/geometry";
import type { PhotoPoint } from "@/lib/marks";
import { expanded } from "./expanded";
import { pickSigma } from "./pick-sigma";
import { localScales } from "./plane-map";
import { propagate, propagatePoints } from "./propagate";
import type { BudgetPartName, Calibration, Quantity } from "./types";

/** Along a line of two or more picks, in mm. Points in photo pixels, here and below. */
export function measureLength(calibration: Calibration, line: readonly PhotoPoint[]): Quantity {
  return propagatePoints(calibration, "mm", line, polylineMoved);
}

/** Inside a simple outline of three or more picks, in mm2: the outline as drawn, sides straight. */
export function measureArea(calibration: Calibration, outline: readonly PhotoPoint[]): Quantity {
  return propagatePoints(calibration, "mm2", outline, areaMoved);
}

/** Greatest distance across an outline, in mm. */
export function measureExtent(calibration: Calibration, outline: readonly PhotoPoint[]): Quantity {
  return propagatePoints(calibration, "mm", outline, extentMoved);
}

/** Of the circle with the outline's area, in mm. */
export function measureEqualCircle(calibration: Calibration, outline: readonly PhotoPoint[]): Quantity {
  const diameter = (areaMm2: number): number => 2 * Math.sqrt(areaMm2 / Math.PI);
  return propagatePoints(calibration, "mm", outline, (points) => {
    const { value, at } = areaMoved(points);
    return { value: diameter(value), at: (index, to) => diameter(at(index, to)) };
  });
}

/** At `vertex` between the rays to `a` and `b`, in degrees. */
export function measureAngle(
  calibration: Calibration,
  a: PhotoPoint,
  vertex: PhotoPoint,
  b: PhotoPoint,
): Quantity {
  return propagatePoints(calibration, "deg", [a, vertex, b], (points) =>
    wholeAgain(points, ([p, q, r]) => angleDeg(p!, q!, r!)),
  );
}

/**
 * Of a round spot drawn from its middle to its rim, in mm: two picks, so the radius carries both their errors. The
 * diameter is that of the circle with the area of the spot's image in the plane. Seen at a slant a round spot is longer
 * one way than the other, and nobody knows which way its radius was drawn: over all ways, the logarithm of the scale
 * scatters by half its range over the root of two.
 */
export function measureSpot(calibration: Calibration, at: PhotoPoint, radiusPx: number): Quantity {
  const sigma = Math.SQRT2 * pickSigma(calibration, at);
  const seen = propagate(calibration, "mm", [radiusPx], [sigma], (map, [radius]) => {
    const { largest, smallest } = localScales(map, at);
    return 2 * radius! * Math.sqrt(largest * smallest);
  });
  const { largest, smallest } = localScales(calibration.map, at);
  return withPart(seen, "tilt", (seen.value * Math.log(largest / smallest)) / 2 / Math.SQRT2);
}

function withPart(quantity: Quantity, part: BudgetPartName, u: number): Quantity {
  if (!(u > 0)) return quantity;
  const old = quantity.budget.find((one) => one.part === part)?.u ?? 0;
  const budget = [...quantity.budget.filter((one) => one.part !== part), { part, u: Math.hypot(old, u) }];
  return { ...quantity, budget, expandedUncertainty: expanded(budget) };
}
