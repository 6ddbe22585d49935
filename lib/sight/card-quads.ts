import { linesMeet, signedArea, type Point } from "@/lib/geometry";
import { aspectOf } from "./aspect";
import type { StraightEdge } from "./straight-edges";

/** ISO/IEC 7810, size ID-1: sides and the radius of the corners, mm (from memory). */
export const ID1 = { longMm: 85.6, shortMm: 53.98, radiusMm: 3.18 } as const;
/** A card fills this share of the picture at least. */
const LEAST_AREA = 0.02;
/** How far its sides may stand to one another from what the card's do: what perspective leaves of it. */
const ASPECT_OFF = 0.04;
/** Focal lengths of phones as shares of the longer side, from the wide main camera to a tele one. Common practice, no source. */
const FOCAL_SHARES = [0.62, 0.7, 0.8, 0.95, 1.15, 1.4, 1.75, 2.2];

/** Corners going round. */
export type Quad = readonly [Point<"frame">, Point<"frame">, Point<"frame">, Point<"frame">];

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Four edges that make a rectangle of the card's proportions, corners going round from a long side's beginning. */
export function quadsOf(edges: readonly StraightEdge[], size: Size): readonly Quad[] {
  const along = (p: StraightEdge, q: StraightEdge): number =>
    Math.abs(p.direction.x * q.direction.x + p.direction.y * q.direction.y);
  const pairs = edges.flatMap((p, i) =>
    edges
      .slice(i + 1)
      .flatMap((q) => (along(p, q) > 0.75 && apart(p, q) > 0.08 * size.width ? [[p, q] as const] : [])),
  );
  const out: Quad[] = [];
  for (let i = 0; i < pairs.length; i++)
    for (let j = i + 1; j < pairs.length; j++) {
      const [[a, b], [c, d]] = [pairs[i]!, pairs[j]!];
      if (along(a, c) > 0.64 || along(b, d) > 0.64) continue;
      const quad = quadOf([a, b], [c, d], size);
      if (quad !== null) out.push(quad);
    }
  return out;
}

const apart = (p: StraightEdge, q: StraightEdge): number =>
  Math.abs(p.direction.x * (q.through.y - p.through.y) - p.direction.y * (q.through.x - p.through.x));

function meet(p: StraightEdge, q: StraightEdge): Point<"frame"> | null {
  const end = ({ through, direction }: StraightEdge): Point<"frame"> => ({
    x: through.x + direction.x,
    y: through.y + direction.y,
  });
  return linesMeet(p.through, end(p), q.through, end(q));
}

function quadOf(
  [a, b]: readonly [StraightEdge, StraightEdge],
  [c, d]: readonly [StraightEdge, StraightEdge],
  size: Size,
): Quad | null {
  const corners = [meet(a, c), meet(a, d), meet(b, d), meet(b, c)];
  if (
    !corners.every((p) => p !== null && p.x > -2 && p.y > -2 && p.x < size.width + 2 && p.y < size.height + 2)
  )
    return null;
  const ring = corners as unknown as Quad;
  if (Math.abs(signedArea(ring)) < LEAST_AREA * size.width * size.height) return null;
  // Each side is seen on most of what lies between its corners.
  if (
    ![
      sideSeen(a, ring[0], ring[1]),
      sideSeen(d, ring[1], ring[2]),
      sideSeen(b, ring[2], ring[3]),
      sideSeen(c, ring[3], ring[0]),
    ].every(Boolean)
  )
    return null;
  return fromLongSide(ring, size);
}

function sideSeen(
  { through, direction, from, to }: StraightEdge,
  a: Point<"frame">,
  b: Point<"frame">,
): boolean {
  const at = (p: Point<"frame">): number => (p.x - through.x) * direction.x + (p.y - through.y) * direction.y;
  const [s, t] = [at(a), at(b)].sort((x, y) => x - y) as [number, number];
  return Math.min(t, to) - Math.max(s, from) > 0.5 * (t - s);
}

/** Turned so that the first side is a long one, clockwise on the picture; null where the proportions are not the card's. */
export function fromLongSide(ring: Quad, { width, height }: Size): Quad | null {
  const clockwise = (signedArea(ring) > 0 ? ring : ring.toReversed()) as Quad;
  const turned = [clockwise[1], clockwise[2], clockwise[3], clockwise[0]] as const;
  const centre = { x: width / 2, y: height / 2 };
  const wanted = ID1.longMm / ID1.shortMm;
  const fits = (quad: Quad): boolean =>
    FOCAL_SHARES.some((share) => {
      const aspect = aspectOf(quad, centre, share * Math.max(width, height));
      return Math.abs(Math.log(aspect / wanted)) < ASPECT_OFF;
    });
  return fits(clockwise) ? clockwise : fits(turned) ? turned : null;
}
