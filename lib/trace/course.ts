import { distance, type Point } from "@/lib/geometry";

type PhotoPlace = Point<"photo">;

/** A smooth line through picked points, by its length in photo pixels; it goes on straight beyond its ends. */
export interface Course {
  readonly lengthPx: number;
  /** The place at `alongPx`, and the unit vectors along the line and square to it (to the right of its travel, y down). */
  at(alongPx: number): {
    readonly point: PhotoPlace;
    readonly along: PhotoPlace;
    readonly across: PhotoPlace;
  };
}

const STEPS = 24;

/**
 * Straight through two points, a centripetal Catmull-Rom spline through more (Catmull and Rom 1974; Yuksel, Schaefer and
 * Keyser 2011 for the spacing that makes no loops). Null for fewer than two different points.
 */
export function courseThrough(picked: readonly PhotoPlace[]): Course | null {
  const points = picked.filter((point, i) => i === 0 || distance(point, picked[i - 1]!) > 1e-6);
  if (points.length < 2) return null;
  const path = points.length === 2 ? points : smoothPath(points);
  const sums = [0];
  for (let i = 1; i < path.length; i++) sums.push(sums[i - 1]! + distance(path[i - 1]!, path[i]!));
  const lengthPx = sums[sums.length - 1]!;
  return { lengthPx, at: (alongPx) => placeOn(path, sums, alongPx) };
}

function placeOn(
  path: readonly PhotoPlace[],
  sums: readonly number[],
  alongPx: number,
): ReturnType<Course["at"]> {
  let low = 0;
  let high = path.length - 2;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (sums[middle]! <= alongPx) low = middle;
    else high = middle - 1;
  }
  const [from, to] = [path[low]!, path[low + 1]!];
  const span = sums[low + 1]! - sums[low]!;
  const along = { x: (to.x - from.x) / span, y: (to.y - from.y) / span };
  const past = alongPx - sums[low]!;
  const point = { x: from.x + along.x * past, y: from.y + along.y * past };
  return { point, along, across: { x: -along.y, y: along.x } };
}

function smoothPath(points: readonly PhotoPlace[]): PhotoPlace[] {
  // Beyond its ends the line goes on bending as it did: three differences in a row.
  const beyond = (p: PhotoPlace, q: PhotoPlace, r: PhotoPlace): PhotoPlace => ({
    x: 3 * p.x - 3 * q.x + r.x,
    y: 3 * p.y - 3 * q.y + r.y,
  });
  const last = points.length - 1;
  const all = [
    beyond(points[0]!, points[1]!, points[2]!),
    ...points,
    beyond(points[last]!, points[last - 1]!, points[last - 2]!),
  ];
  const path: PhotoPlace[] = [points[0]!];
  for (let i = 0; i < last; i++)
    for (let k = 1; k <= STEPS; k++)
      path.push(splinePoint(all[i]!, all[i + 1]!, all[i + 2]!, all[i + 3]!, k / STEPS));
  return path;
}

/** Barry and Goldman's pyramid with knots a root of the distance apart. */
function splinePoint(a: PhotoPlace, b: PhotoPlace, c: PhotoPlace, d: PhotoPlace, share: number): PhotoPlace {
  const t1 = Math.sqrt(distance(a, b));
  const t2 = t1 + Math.sqrt(distance(b, c));
  const t3 = t2 + Math.sqrt(distance(c, d));
  const t = t1 + (t2 - t1) * share;
  const mix = (p: PhotoPlace, q: PhotoPlace, from: number, to: number): PhotoPlace => {
    const w = (t - from) / (to - from);
    return { x: p.x + (q.x - p.x) * w, y: p.y + (q.y - p.y) * w };
  };
  const [ab, bc, cd] = [mix(a, b, 0, t1), mix(b, c, t1, t2), mix(c, d, t2, t3)];
  return mix(mix(ab, bc, 0, t2), mix(bc, cd, t1, t3), t1, t2);
}
