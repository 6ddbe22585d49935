import type { PhotoPoint } from "@/lib/marks";
import { finestGrainPx } from "./options";
import type { Calibration } from "./types";

/**
 * Standard deviation per axis, in photo pixels, of one picked point: the stated error on the screen times the photo
 * pixels that a screen pixel covered when the point was set. A point that does not say gets that of the options.
 */
export function pickSigma(
  { pickSigmaPx, viewedSigmaPx }: Pick<Calibration, "pickSigmaPx" | "viewedSigmaPx">,
  { grainPx }: PhotoPoint,
): number {
  return grainPx === undefined ? pickSigmaPx : viewedSigmaPx * Math.max(finestGrainPx, grainPx);
}

/** The same for a list of points, twice each: for x and for y. */
export function pickSigmas(calibration: Calibration, points: readonly PhotoPoint[]): readonly number[] {
  return points.flatMap((point) => {
    const sigma = pickSigma(calibration, point);
    return [sigma, sigma];
  });
}

/** Root mean square over the points, in photo pixels: what a scatter of theirs owes to the picking alone. */
export function meanPickSigma(calibration: Calibration, points: readonly PhotoPoint[]): number {
  const squares = points.reduce((sum, point) => sum + pickSigma(calibration, point) ** 2, 0);
  return points.length === 0 ? 0 : Math.sqrt(squares / points.length);
}
