import type { At } from "./macro-spec";

export const plus = (a: At, b: At, by = 1): At => [a[0] + by * b[0], a[1] + by * b[1]];
export const apart = (a: At, b: At): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
export const inner = (a: At, b: At): number => a[0] * b[0] + a[1] * b[1];
export const mean = (a: At, b: At, share: number): At => [
  a[0] + share * (b[0] - a[0]),
  a[1] + share * (b[1] - a[1]),
];

/** A smooth curve through points, `pieces` to a stretch (Catmull and Rom 1974, uniform); the ends keep their direction. */
export function bend(points: readonly At[], pieces = 24): readonly At[] {
  const at = (i: number): At => points[Math.min(points.length - 1, Math.max(0, i))]!;
  const curve: At[] = [points[0]!];
  for (let i = 0; i + 1 < points.length; i++)
    for (let k = 1; k <= pieces; k++) {
      const t = k / pieces;
      const axis = (c: 0 | 1): number => {
        const [a, b, d, e] = [at(i - 1)[c], at(i)[c], at(i + 1)[c], at(i + 2)[c]];
        return 0.5 * (2 * b + t * (d - a + t * (2 * a - 5 * b + 4 * d - e + t * (3 * b - a - 3 * d + e))));
      };
      curve.push([axis(0), axis(1)]);
    }
  return curve;
}

/** Straight from point to point, `pieces` to a stretch. */
export function straight(points: readonly At[], pieces = 24): readonly At[] {
  return points.flatMap((point, i) => {
    const next = points[i + 1];
    return next === undefined
      ? [point]
      : Array.from({ length: pieces }, (_, k) => mean(point, next, k / pieces));
  });
}

/** Parts joined end to end; where one begins as the other ended the point stands once. */
export function joinParts(...parts: readonly (readonly At[])[]): readonly At[] {
  const all = parts.flat();
  return all.filter((point, i) => i === 0 || apart(point, all[i - 1]!) > 1e-9);
}

/** Where a horizontal line at `y` lies inside a ring: pairs of x, from left to right. */
export function crossings(ring: readonly At[], y: number): readonly number[] {
  const found: number[] = [];
  let [x0, y0] = ring.at(-1)!;
  for (const [x1, y1] of ring) {
    if (y0 <= y !== y1 <= y) found.push(x0 + ((y - y0) / (y1 - y0)) * (x1 - x0));
    [x0, y0] = [x1, y1];
  }
  return found.sort((a, b) => a - b);
}

/**
 * Area of a ring, of which at each height only what `keep` leaves of an inside stretch counts: thin slices, so that it
 * owes nothing to any clipping.
 */
export function slicedArea(
  ring: readonly At[],
  keep: (y: number, from: number, to: number) => number,
  slices = 1500,
): number {
  const ys = ring.map(([, y]) => y);
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const step = (high - low) / slices;
  let area = 0;
  for (let i = 0; i < slices; i++) {
    const y = low + (i + 0.5) * step;
    const xs = crossings(ring, y);
    for (let k = 0; k + 1 < xs.length; k += 2) area += keep(y, xs[k]!, xs[k + 1]!) * step;
  }
  return area;
}
