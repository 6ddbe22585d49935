import { distance, fitHomography, fitLine, linesMeet, type FittedLine, type Point } from "@/lib/geometry";
import type { RgbaImage } from "@/lib/strip";
import { fromLongSide, ID1, quadsOf, type Quad } from "./card-quads";
import { brightness, planeOf, type Plane } from "./plane";
import { roundCorners } from "./round-corners";
import type { StraightEdge } from "./straight-edges";

/** Two places on each edge of a card of size ID-1, going round from a long one, photo pixels. */
export interface FoundCard {
  readonly edges: readonly (readonly [Point<"photo">, Point<"photo">])[];
  /** Standard deviation across its edge of either place, photo pixels. */
  readonly sigmaPx: number;
}

const FULL_PX = 2400;
const LEAST_SUPPORT = 0.8;
const STATIONS = 28;

/** The one card of size ID-1 among these edges (pixels of a plane of `block` photo pixels); null: none, or not one alone. */
export function findCard(image: RgbaImage, edges: readonly StraightEdge[], block: number): FoundCard | null {
  const plane = planeOf(image, FULL_PX);
  const grow = block / plane.block;
  const found: Refined[] = [];
  for (const quad of quadsOf(edges, { width: plane.width / grow, height: plane.height / grow })) {
    const refined = refine(plane, quad.map(({ x, y }) => ({ x: x * grow, y: y * grow })) as unknown as Quad);
    if (refined === null || !isCard(plane, refined)) continue;
    found.push(refined);
  }
  const best = found.toSorted((p, q) => p.offPx - q.offPx)[0];
  // An edge and its shadow make two of one card; two that lie apart are two things.
  return best === undefined || found.some((one) => !isSame(one, best)) ? null : inPhoto(best, plane.block);
}

const isSame = (p: Refined, q: Refined): boolean =>
  p.corners.every((corner) =>
    q.corners.some((other) => distance(corner, other) < 0.03 * distance(q.corners[0], q.corners[2])),
  );

interface Refined {
  readonly lines: readonly FittedLine<"frame">[];
  readonly corners: Quad;
  readonly offPx: number;
}

/** Every side set anew where the light turns most steeply across it, twice; null where one is not to be seen on most of it. */
function refine(plane: Plane, quad: Quad): Refined | null {
  let corners = quad;
  let lines: readonly FittedLine<"frame">[] = [];
  for (const reach of [7, 4]) {
    const sides = corners.map((a, i) => refineSide(plane, a, corners[(i + 1) % 4]!, reach));
    if (sides.some((side) => side === null)) return null;
    lines = sides as readonly FittedLine<"frame">[];
    const met = lines.map((line, i) => meetLines(lines[(i + 3) % 4]!, line));
    if (met.some((corner) => corner === null)) return null;
    corners = met as unknown as Quad;
  }
  return { lines, corners, offPx: Math.max(...lines.map(({ rms }) => rms)) };
}

const meetLines = (p: FittedLine<"frame">, q: FittedLine<"frame">): Point<"frame"> | null =>
  linesMeet(p.through, { x: p.through.x + p.direction.x, y: p.through.y + p.direction.y }, q.through, {
    x: q.through.x + q.direction.x,
    y: q.through.y + q.direction.y,
  });

function refineSide(
  plane: Plane,
  a: Point<"frame">,
  b: Point<"frame">,
  reach: number,
): FittedLine<"frame"> | null {
  const long = distance(a, b);
  const [ux, uy] = [(b.x - a.x) / long, (b.y - a.y) / long];
  const places = Array.from({ length: STATIONS }, (_, i) => 0.1 + (0.8 * i) / (STATIONS - 1)).flatMap(
    (share) => {
      const [x, y] = [a.x + ux * long * share, a.y + uy * long * share];
      const off = steepestAcross((d) => brightness(plane, x - uy * d, y + ux * d), reach);
      return off === null ? [] : [{ x: x - uy * off, y: y + ux * off }];
    },
  );
  if (places.length < LEAST_SUPPORT * STATIONS) return null;
  const first = fitLine(places);
  if (first === null) return null;
  const near = places.filter(({ x, y }) => {
    const off = first.direction.x * (y - first.through.y) - first.direction.y * (x - first.through.x);
    return Math.abs(off) <= Math.max(0.7, 1.5 * first.rms);
  });
  return near.length < LEAST_SUPPORT * STATIONS ? null : fitLine(near);
}

function steepestAcross(light: (off: number) => number, reach: number): number | null {
  let [best, most] = [0, 4];
  for (let d = -reach; d <= reach; d += 0.5) {
    const step = Math.abs(light(d + 0.75) - light(d - 0.75));
    if (step > most) [best, most] = [d, step];
  }
  return most === 4 ? null : best;
}

/** Proportions once more on the refined corners, and the corners themselves round as the card's are. */
function isCard(plane: Plane, { corners, offPx }: Refined): boolean {
  if (offPx > 1) return false;
  const size = { width: plane.width, height: plane.height };
  const first = fromLongSide(corners, size);
  if (first === null) return false;
  const map = fitHomography<"strip", "frame">(
    [
      { x: 0, y: 0 },
      { x: ID1.longMm, y: 0 },
      { x: ID1.longMm, y: ID1.shortMm },
      { x: 0, y: ID1.shortMm },
    ],
    first,
  );
  return map !== null && roundCorners(plane, map) >= 3;
}

/** Places at a fifth and four fifths of each side, where no corner is near. */
function inPhoto({ corners, offPx }: Refined, block: number): FoundCard {
  const edges = corners.map((a, i) => {
    const b = corners[(i + 1) % 4]!;
    const place = (share: number): Point<"photo"> => ({
      x: (a.x + share * (b.x - a.x)) * block,
      y: (a.y + share * (b.y - a.y)) * block,
    });
    return [place(0.2), place(0.8)] as const;
  });
  return { edges, sigmaPx: block * Math.max(0.3, offPx) };
}
