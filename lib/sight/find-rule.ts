import { distance, type Point } from "@/lib/geometry";
import type { RgbaImage } from "@/lib/strip";
import { followTicks } from "./follow-ticks";
import { ladderThrough, type Ladder } from "./ladder";
import { brightness, planeOf, type Plane } from "./plane";
import { rhythmOf, withoutDrift, type Rhythm } from "./rhythm";
import type { StraightEdge } from "./straight-edges";
import { divisionOf, type Division } from "./tick-pattern";
import { ticksSeen, type Side } from "./tick-lengths";

/** Two lines of a rule a known length apart, photo pixels. */
export interface FoundRule {
  readonly a: Point<"photo">;
  readonly b: Point<"photo">;
  readonly lengthMm: number;
  readonly division: Division["id"];
  /** Standard deviation along the rule of either, photo pixels. */
  readonly sigmaPx: number;
}

const FULL_PX = 2400;
/** Where lines may stand inside the edge, pixels of the plane. */
const DEPTHS = [3, 6, 10, 15, 21] as const;
const LEAST_BEAT = 4;
const MOST_BEAT = 64;
const LEAST_STRENGTH = 0.35;
const LEAST_TICKS = 24;
/** Lines lie on their ladder to this share of a pitch. */
const MOST_OFF = 0.08;
const TRIES = 5;
/** A rule's width, about. Two points know nothing of a tilt; one that makes its far edge so much smaller than the near one is too much. */
const ACROSS_MM = 20;
const MOST_FALL = 0.025;
/** Lines at an end lie no farther from the even than this share of the mean pitch. */
const MOST_UNEVEN = 0.08;

/** A rule as one of its edges tells it, and how much smaller it is seen at its other edge, a share. */
type Told = FoundRule & { readonly fall: number };

interface Beating extends Side {
  readonly profile: Float64Array;
  readonly rhythm: Rhythm;
}

/** A rule along one of these edges (pixels of a plane of `block` photo pixels); null where no division stands out, "tilted" where one does and the camera looks at a slant. */
export function findRule(
  image: RgbaImage,
  edges: readonly StraightEdge[],
  block: number,
): FoundRule | "tilted" | null {
  const plane = planeOf(image, FULL_PX);
  const grow = block / plane.block;
  const beating = edges
    .map((edge) => grown(edge, grow))
    .flatMap((edge) => ([1, -1] as const).flatMap((way) => beatingSide(plane, edge, way) ?? []))
    .sort((p, q) => q.rhythm.strength - p.rhythm.strength);
  const read = beating.slice(0, TRIES).flatMap((side) => readRule(plane, side) ?? []);
  if (read.length === 0) return null;
  const best = read.reduce((p, q) => (distance(q.a, q.b) > distance(p.a, p.b) ? q : p));
  // Two edges of one rule that tell different scales: one of them is misread, or the camera is tilted.
  if (read.some((one) => Math.abs(apart(one, best)) > MOST_FALL)) return "tilted";
  if (read.length === 1 && Math.abs(best.fall) > MOST_FALL) return "tilted";
  const { fall: _, ...rule } = best;
  return rule;
}

const grown = ({ through: { x, y }, direction, from, to }: StraightEdge, by: number): StraightEdge => ({
  through: { x: x * by, y: y * by },
  direction,
  from: from * by,
  to: to * by,
});

/** The side of an edge at the depth at which it beats most plainly. */
function beatingSide(plane: Plane, edge: StraightEdge, way: 1 | -1): Beating | null {
  const inward = { x: -way * edge.direction.y, y: way * edge.direction.x };
  const side = { edge, inward, from: edge.from };
  let best: Beating | null = null;
  for (const depth of DEPTHS) {
    const profile = profileAt(plane, side, depth);
    const rhythm = rhythmOf(profile, LEAST_BEAT, MOST_BEAT);
    if (rhythm !== null && rhythm.strength > Math.max(LEAST_STRENGTH, best?.rhythm.strength ?? 0))
      best = { ...side, profile, rhythm };
  }
  return best;
}

/** Along an edge at some depth, mean of three rows, without drift, and turned so that lines rise. */
function profileAt(plane: Plane, { edge, inward, from }: Side, depth: number): Float64Array {
  const raw = new Float64Array(Math.max(0, Math.floor(edge.to - from)));
  for (let i = 0; i < raw.length; i++) {
    const x = edge.through.x + edge.direction.x * (from + i);
    const y = edge.through.y + edge.direction.y * (from + i);
    for (let d = depth - 1; d <= depth + 1; d++)
      raw[i]! += brightness(plane, x + inward.x * d, y + inward.y * d) / 3;
  }
  const flat = withoutDrift(raw, 24);
  // Lines are narrower than what lies between them: they make the profile lean to their side.
  const lean = flat.reduce((sum, value) => sum + value ** 3, 0);
  return lean < 0 ? flat.map((value) => -value) : flat;
}

function readRule(plane: Plane, side: Beating): Told | null {
  const ticks = followTicks(side.profile, side.rhythm);
  if (ticks.length < LEAST_TICKS) return null;
  const ladder = ladderThrough(ticks);
  if (ladder === null || ladder.kept.length < LEAST_TICKS) return null;
  const { lengths, fallPerPx } = ticksSeen(plane, side, ladder);
  const division = divisionOf(lengths);
  if (division === null) return null;
  const found = scaleOf(plane, side, ladder, division);
  if (found === null) return null;
  const pxPerMm = distance(found.a, found.b) / plane.block / found.lengthMm;
  return { ...found, fall: fallPerPx * pxPerMm * ACROSS_MM };
}

function scaleOf(plane: Plane, side: Side, ladder: Ladder, { id, pitchMm }: Division): FoundRule | null {
  const [first, last] = [ladder.kept[0]!.k, ladder.kept[ladder.kept.length - 1]!.k];
  const pitch = (ladder.at(last) - ladder.at(first)) / (last - first);
  if (ladder.rms > MOST_OFF * pitch) return null;
  const uneven = (k: number): number => Math.abs((ladder.at(k + 1) - ladder.at(k)) / pitch - 1);
  if (Math.max(uneven(first), uneven(last - 1)) > MOST_UNEVEN) return null;
  const place = (k: number): Point<"photo"> => {
    const along = side.from + ladder.at(k);
    const { through, direction } = side.edge;
    return {
      x: (through.x + direction.x * along) * plane.block,
      y: (through.y + direction.y * along) * plane.block,
    };
  };
  // An end of a fitted ladder is known as its own scatter over a third of the lines says, and not below a fifth of a pixel.
  const sigmaPx = plane.block * Math.max(0.2, ladder.rms * Math.sqrt(9 / ladder.kept.length));
  return { a: place(first), b: place(last), lengthMm: (last - first) * pitchMm, division: id, sigmaPx };
}

const apart = (p: Told, q: Told): number =>
  Math.log((distance(p.a, p.b) / p.lengthMm) * (q.lengthMm / distance(q.a, q.b)));
