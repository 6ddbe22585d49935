import type { AnySpace, Point } from "./point";
import { centroidOf } from "./vector";

export interface FittedLine<S = AnySpace> {
  readonly through: Point<S>;
  /** Unit vector along the line. */
  readonly direction: Point<S>;
  /** Root mean square of the distances from the line. */
  readonly rms: number;
}

/**
 * Total least squares: the line with the least sum of squared perpendicular distances, so that turning the points turns
 * the line. Null for fewer than two points or when all coincide.
 */
export function fitLine<S = AnySpace>(points: readonly Point<S>[]): FittedLine<S> | null {
  if (points.length < 2) return null;
  const through = centroidOf(points);
  let sxx = 0;
  let sxy = 0;
  let syy = 0;
  for (const { x, y } of points) {
    sxx += (x - through.x) ** 2;
    sxy += (x - through.x) * (y - through.y);
    syy += (y - through.y) ** 2;
  }
  if (!(sxx + syy > 0)) return null;
  const angle = 0.5 * Math.atan2(2 * sxy, sxx - syy);
  const direction = { x: Math.cos(angle), y: Math.sin(angle) };
  const squares = points.reduce(
    (sum, p) => sum + (direction.x * (p.y - through.y) - direction.y * (p.x - through.x)) ** 2,
    0,
  );
  return { through, direction, rms: Math.sqrt(squares / points.length) };
}
