import { fitLine, subtract, dot } from "@/lib/geometry";
import type { PhotoPoint } from "@/lib/marks";
import { meanPickSigma, pickSigmas } from "./pick-sigma";
import { mapPoints } from "./plane-map";
import { propagate } from "./propagate";
import type { Calibration, PlanePoint, Quantity } from "./types";

export interface RippleMeasures {
  /** Mean distance from ripple to ripple along the bead, mm. */
  readonly spacing: Quantity;
  /** Standard deviation of the spacings over their mean, pick error taken out: 0 is perfectly even. No code limits it. */
  readonly irregularity: number;
}

/**
 * Ripple spacing and its evenness from one pick on each of four or more neighbouring ripples, in photo pixels. Null for
 * fewer, or when all picks coincide.
 */
export function measureRipples(
  calibration: Calibration,
  picks: readonly PhotoPoint[],
): RippleMeasures | null {
  const series = spacings(mapPoints(calibration.map, picks));
  if (picks.length < 4 || series === null) return null;
  const numbers = picks.flatMap(({ x, y }) => [x, y]);
  const sigmas = pickSigmas(calibration, picks);
  const spacing = propagate(calibration, "mm", numbers, sigmas, (map, list) => {
    const moved = Array.from({ length: list.length / 2 }, (_, i) => ({
      x: list[2 * i]!,
      y: list[2 * i + 1]!,
    }));
    return mean(spacings(mapPoints(map, moved)) ?? [NaN]);
  });
  const middle = mean(series);
  const scatter = series.reduce((sum, one) => sum + (one - middle) ** 2, 0) / (series.length - 1);
  // Each spacing carries the error of two picks.
  const noise = 2 * (meanPickSigma(calibration, picks) * calibration.mmPerPx) ** 2;
  return { spacing, irregularity: Math.sqrt(Math.max(0, scatter - noise)) / middle };
}

/** From neighbour to neighbour along the line fitted through the picks. */
function spacings(points: readonly PlanePoint[]): readonly number[] | null {
  const axis = fitLine(points);
  if (axis === null) return null;
  const along = points
    .map((point) => dot(subtract(point, axis.through), axis.direction))
    .sort((a, b) => a - b);
  return along.slice(1).map((at, i) => at - along[i]!);
}

function mean(list: readonly number[]): number {
  return list.reduce((sum, value) => sum + value, 0) / list.length;
}
