import { add, cross, distance, dot, subtract, times, type Point } from "@/lib/geometry";

/** A point where the path turns by more than this is a corner and stays one. Own estimate. */
const CORNER_TURN_DEG = 28;
/** Pieces per stretch between two picks: the chord of a piece is off its arc by a thirtieth of what the stretch's is. */
const PIECES = 6;

/** Which points of an open path are corners: its ends, and where it turns sharply. */
export function cornersOf<S>(path: readonly Point<S>[]): readonly boolean[] {
  return path.map((point, i) => {
    if (i === 0 || i === path.length - 1) return true;
    const before = subtract(point, path[i - 1]!);
    const after = subtract(path[i + 1]!, point);
    return (Math.atan2(Math.abs(cross(before, after)), dot(before, after)) * 180) / Math.PI > CORNER_TURN_DEG;
  });
}

/**
 * A smooth path through picks: straight chords would cut off what bulges between them. Centripetal Catmull-Rom curves
 * (Catmull and Rom 1974; Yuksel, Schaefer and Keyser 2011: no loops) from corner to corner; at a corner the curve goes on
 * as its mirror image, so that an arc of a circle keeps its bulge to its end. Between two neighbouring corners it is
 * straight. Picks stay points of the path, every sixth.
 */
export function smoothPath<S>(path: readonly Point<S>[], corners = cornersOf(path)): readonly Point<S>[] {
  const first = path[0];
  if (first === undefined) return [];
  const smooth: Point<S>[] = [first];
  for (let i = 0; i + 1 < path.length; i++) {
    const [a, b] = [path[i]!, path[i + 1]!];
    const before = corners[i] ? null : path[i - 1]!;
    const after = corners[i + 1] ? null : path[i + 2]!;
    for (let k = 1; k < PIECES; k++) smooth.push(between(before, a, b, after, k / PIECES));
    smooth.push(b);
  }
  return smooth;
}

function between<S>(
  before: Point<S> | null,
  a: Point<S>,
  b: Point<S>,
  after: Point<S> | null,
  share: number,
): Point<S> {
  if (before === null && after === null) return mix(a, b, share);
  if (distance(a, b) === 0) return a;
  return catmullRom(before ?? mirrored(after!, a, b), a, b, after ?? mirrored(before!, a, b), share);
}

const mix = <S>(a: Point<S>, b: Point<S>, share: number): Point<S> => add(a, times(subtract(b, a), share));

/** Image of a point in the line that halves the way from a to b. */
function mirrored<S>(point: Point<S>, a: Point<S>, b: Point<S>): Point<S> {
  const chord = subtract(b, a);
  const along = dot(subtract(point, mix(a, b, 0.5)), chord) / dot(chord, chord);
  return subtract(point, times(chord, 2 * along));
}

/** Barry and Goldman's pyramid (1988), knots spaced by the root of the distance. */
function catmullRom<S>(p0: Point<S>, p1: Point<S>, p2: Point<S>, p3: Point<S>, share: number): Point<S> {
  const t0 = 0;
  const t1 = t0 + Math.sqrt(distance(p0, p1));
  const t2 = t1 + Math.sqrt(distance(p1, p2));
  const t3 = t2 + Math.sqrt(distance(p2, p3));
  const t = t1 + share * (t2 - t1);
  const at = (a: Point<S>, b: Point<S>, from: number, to: number): Point<S> =>
    to === from ? a : mix(a, b, (t - from) / (to - from));
  const a1 = at(p0, p1, t0, t1);
  const a2 = at(p1, p2, t1, t2);
  const a3 = at(p2, p3, t2, t3);
  return at(at(a1, a2, t0, t2), at(a2, a3, t1, t3), t1, t2);
}
