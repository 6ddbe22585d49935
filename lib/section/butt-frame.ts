import { fail, issue, ok, type Result } from "@/lib/base";
import { add, centroidOf, dot, fitLine, linesMeet, subtract, times } from "@/lib/geometry";
import type { PlanePoint } from "@/lib/measure";
import { squareTo } from "./fillet-corner";
import type { SectionIssue } from "./types";

/** The plates of a butt weld laid straight. */
export interface ButtFrame {
  readonly through: PlanePoint;
  /** Unit vector along the face line, from side 1 to side 2. */
  readonly along: PlanePoint;
  /** Square to it, out of the face. */
  readonly out: PlanePoint;
  /** The line of the back; null: not drawn. */
  readonly back: {
    readonly through: PlanePoint;
    readonly along: PlanePoint;
    readonly out: PlanePoint;
  } | null;
  /** Between face and back at the middle of the weld, or as stated; null: neither. */
  readonly thickness: number | null;
}

/**
 * @param towards From side 1 to side 2, roughly.
 * @param statedThickness Taken where the back is not drawn.
 */
export function buttFrame(
  face: readonly PlanePoint[],
  back: readonly PlanePoint[] | null,
  outline: readonly PlanePoint[],
  towards: PlanePoint,
  statedThickness: number | null,
): Result<ButtFrame, SectionIssue> {
  const line = fitLine(face);
  if (line === null) return fail(issue("edge-has-no-direction", ["edges"], { role: "face" }));
  const behind = back === null ? null : fitLine(back);
  if (back !== null && behind === null)
    return fail(issue("edge-has-no-direction", ["edges"], { role: "back" }));
  const along = dot(line.direction, towards) < 0 ? times(line.direction, -1) : line.direction;
  const middle = centroidOf(outline);
  const inwards = subtract(behind?.through ?? middle, line.through);
  const out = squareTo(along, times(inwards, -1));
  if (behind === null)
    return ok({ through: line.through, along, out, back: null, thickness: statedThickness });
  const foot = linesMeet(middle, add(middle, out), behind.through, add(behind.through, behind.direction));
  return ok({
    through: line.through,
    along,
    out,
    back: {
      through: behind.through,
      along: dot(behind.direction, along) < 0 ? times(behind.direction, -1) : behind.direction,
      out: squareTo(behind.direction, times(out, -1)),
    },
    thickness: foot === null ? NaN : -dot(subtract(foot, line.through), out),
  });
}

/** Along the face line, and above it. */
export function onFace(
  { through, along, out }: ButtFrame,
  point: PlanePoint,
): { readonly x: number; readonly h: number } {
  const from = subtract(point, through);
  return { x: dot(from, along), h: dot(from, out) };
}

/** Along the back line, and beyond it; without a back the stated thickness stands for it. */
export function onBack(
  frame: ButtFrame,
  point: PlanePoint,
): { readonly x: number; readonly g: number } | null {
  const { back, thickness } = frame;
  if (back !== null) {
    const from = subtract(point, back.through);
    return { x: dot(from, back.along), g: dot(from, back.out) };
  }
  if (thickness === null) return null;
  const { x, h } = onFace(frame, point);
  return { x, g: -h - thickness };
}
