import { fail, issue, ok, type Result } from "@/lib/base";
import {
  add,
  angleDeg,
  centroidOf,
  cross,
  dot,
  fitLine,
  length,
  linesMeet,
  subtract,
  times,
  type FittedLine,
  type Point,
} from "@/lib/geometry";
import type { SectionIssue } from "./types";

/** One plate of the corner: unit vectors from the corner along it, and square to it out of the metal. */
export interface Side<S> {
  readonly along: Point<S>;
  readonly out: Point<S>;
}

export interface FilletCorner<S> {
  /** Theoretical root: where the plates' faces meet. */
  readonly at: Point<S>;
  readonly sides: readonly [Side<S>, Side<S>];
  /** Halves the angle, from the corner towards the face of the weld. */
  readonly bisector: Point<S>;
  /** Between the plates, on the side of the weld. */
  readonly angleDeg: number;
}

/** Two lines cross in four corners; the weld lies in the one that holds the middle of its outline. */
export function filletCorner<S>(
  plate1: readonly Point<S>[],
  plate2: readonly Point<S>[],
  outline: readonly Point<S>[],
): Result<FilletCorner<S>, SectionIssue> {
  const lines = [fitLine(plate1), fitLine(plate2)] as const;
  const [one, two] = lines;
  if (one === null || two === null)
    return fail(issue("edge-has-no-direction", ["edges"], { role: one === null ? "plate-1" : "plate-2" }));
  const at = Math.abs(cross(one.direction, two.direction)) < LEAST_TURN ? null : meet(one, two);
  if (at === null) return fail(issue("edges-parallel", ["edges"]));
  const middle = subtract(centroidOf(outline), at);
  const turn = cross(one.direction, two.direction);
  // Of middle = a d1 + b d2 both shares must be positive.
  const along1 = times(one.direction, Math.sign(cross(middle, two.direction) / turn) || 1);
  const along2 = times(two.direction, Math.sign(cross(one.direction, middle) / turn) || 1);
  const half = add(along1, along2);
  return ok({
    at,
    sides: [
      { along: along1, out: squareTo(along1, along2) },
      { along: along2, out: squareTo(along2, along1) },
    ],
    bisector: times(half, 1 / length(half)),
    angleDeg: angleDeg(along1, { x: 0, y: 0 }, along2),
  });
}

/** Lines that turn by less than five degrees are no corner: sin 5 degrees. */
const LEAST_TURN = 0.087;

const meet = <S>(one: FittedLine<S>, two: FittedLine<S>): Point<S> | null =>
  linesMeet(one.through, add(one.through, one.direction), two.through, add(two.through, two.direction));

/** Unit vector square to `along`, towards `towards`. */
export function squareTo<S>(along: Point<S>, towards: Point<S>): Point<S> {
  const square = { x: -along.y, y: along.x };
  return dot(square, towards) < 0 ? times(square, -1) : square;
}

/** Along a side from the corner, and out of the metal: negative is inside the plate. */
export function onSide<S>(
  corner: FilletCorner<S>,
  side: 0 | 1,
  point: Point<S>,
): { readonly s: number; readonly p: number } {
  const from = subtract(point, corner.at);
  const { along, out } = corner.sides[side];
  return { s: dot(from, along), p: dot(from, out) };
}

/** Towards the face of the weld along the line that halves the angle. */
export function outwards<S>(corner: FilletCorner<S>, point: Point<S>): number {
  return dot(subtract(point, corner.at), corner.bisector);
}
