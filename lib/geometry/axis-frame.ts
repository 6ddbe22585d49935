import type { Homography } from "./homography";
import type { AnySpace, Point } from "./point";
import { polylineLength } from "./polyline";
import { distance } from "./vector";

/** A line that comes back to where it began has no direction: its ends must lie this share of its length apart. */
const LEAST_CHORD_SHARE = 0.1;

/**
 * The turn and shift that lay a line along the x axis: its first point to the origin, its last onto positive x. Lengths
 * keep their unit. Null where the line has no direction: no length, or bent back to its start.
 */
export function axisFrame<S, T = AnySpace>(line: readonly Point<S>[]): Homography<S, T> | null {
  const first = line[0];
  const last = line.at(-1);
  if (!first || !last) return null;
  const chord = distance(first, last);
  if (!(chord > 0) || chord < LEAST_CHORD_SHARE * polylineLength(line)) return null;
  const c = (last.x - first.x) / chord;
  const s = (last.y - first.y) / chord;
  return [c, s, -(c * first.x + s * first.y), -s, c, s * first.x - c * first.y, 0, 0, 1];
}
