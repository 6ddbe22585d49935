import { angleDeg, greatestExtent, leastWidth, polygonArea, polylineLength } from "@/lib/geometry";
import type { PhotoPoint } from "@/lib/marks";
import { pickSigma } from "./pick-sigma";
import { localScales } from "./plane-map";
import { propagate, propagatePoints } from "./propagate";
import type { Calibration, Quantity } from "./types";

/** Along a line of two or more picks, in mm. Points in photo pixels, here and below. */
export function measureLength(calibration: Calibration, line: readonly PhotoPoint[]): Quantity {
  return propagatePoints(calibration, "mm", line, polylineLength);
}

/** Inside a simple outline of three or more picks, in mm2: the outline as drawn, sides straight. */
export function measureArea(calibration: Calibration, outline: readonly PhotoPoint[]): Quantity {
  return propagatePoints(calibration, "mm2", outline, polygonArea);
}

/** Greatest distance across an outline, in mm. */
export function measureExtent(calibration: Calibration, outline: readonly PhotoPoint[]): Quantity {
  return propagatePoints(calibration, "mm", outline, greatestExtent);
}

/** Least distance between two parallel lines that hold the outline, in mm. */
export function measureLeastWidth(calibration: Calibration, outline: readonly PhotoPoint[]): Quantity {
  return propagatePoints(calibration, "mm", outline, leastWidth);
}

/** Of the circle with the outline's area, in mm. */
export function measureEqualCircle(calibration: Calibration, outline: readonly PhotoPoint[]): Quantity {
  return propagatePoints(
    calibration,
    "mm",
    outline,
    (points) => 2 * Math.sqrt(polygonArea(points) / Math.PI),
  );
}

/** At `vertex` between the rays to `a` and `b`, in degrees. */
export function measureAngle(
  calibration: Calibration,
  a: PhotoPoint,
  vertex: PhotoPoint,
  b: PhotoPoint,
): Quantity {
  return propagatePoints(calibration, "deg", [a, vertex, b], ([p, q, r]) => angleDeg(p!, q!, r!));
}

/**
 * Of a round spot drawn from its middle to its rim, in mm: two picks, so the radius carries both their errors. The
 * diameter is that of the circle with the area of the spot's image in the plane.
 */
export function measureSpot(calibration: Calibration, at: PhotoPoint, radiusPx: number): Quantity {
  const sigma = Math.SQRT2 * pickSigma(calibration, at);
  return propagate(calibration, "mm", [radiusPx], [sigma], (map, [radius]) => {
    const { largest, smallest } = localScales(map, at);
    return 2 * radius! * Math.sqrt(largest * smallest);
  });
}
