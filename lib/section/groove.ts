import { cross, dot, polylineLength, projectOnPolyline, subtract, times } from "@/lib/geometry";
import type { PlanePoint } from "@/lib/measure";
import { onFace, type ButtFrame } from "./butt-frame";
import { squareTo } from "./fillet-corner";
import { clippedArea } from "./clip-area";
import type { Arc } from "./ring";
import { depthsOf, END_SHARE, type Depths } from "./shape";

/** From the face to the back, whichever way it was drawn. */
export function downwards(frame: ButtFrame, groove: readonly PlanePoint[]): readonly PlanePoint[] {
  const [first, last] = [groove[0]!, groove.at(-1)!];
  return onFace(frame, first).h >= onFace(frame, last).h ? groove : [...groove].reverse();
}

/** Into the plate of this side. */
const plateWards = ({ along }: ButtFrame, side: 0 | 1): PlanePoint => (side === 0 ? times(along, -1) : along);

const noDepths: Depths = { greatest: NaN, least: NaN, at: [] };

/** How deep the joint face was melted, between a tenth and nine tenths of its length. NaN without a joint face. */
export function grooveDepths(
  frame: ButtFrame,
  drawn: readonly PlanePoint[] | null,
  side: 0 | 1,
  arc: Arc,
  ring: readonly PlanePoint[],
  curve: readonly PlanePoint[],
): Depths {
  if (drawn === null) return noDepths;
  const groove = downwards(frame, drawn);
  const run = subtract(groove.at(-1)!, groove[0]!);
  // The offset is positive on one side of the way down: which one is the plate's depends on the side and on the photo.
  const sign = cross(run, plateWards(frame, side)) < 0 ? -1 : 1;
  const whole = polylineLength(groove);
  return depthsOf(arc, ring, curve, [END_SHARE * whole, (1 - END_SHARE) * whole], (point) => {
    const foot = projectOnPolyline(point, groove);
    return { s: foot?.along ?? NaN, d: sign * (foot?.offset ?? NaN) };
  });
}

/**
 * Area of the weld metal that was plate on this side: behind the joint face, between face and back. In slices parallel to
 * the face, one per piece of the joint face, so that a land under a bevel needs nothing special. NaN without a joint face
 * or a back.
 */
export function meltedBehind(
  frame: ButtFrame,
  drawn: readonly PlanePoint[] | null,
  ring: readonly PlanePoint[],
  side: 0 | 1,
): number {
  const { back, along, out, through } = frame;
  if (drawn === null || back === null) return NaN;
  const groove = downwards(frame, drawn);
  const into = plateWards(frame, side);
  const down = times(out, -1);
  let area = 0;
  for (let i = 0; i + 1 < groove.length; i++) {
    const [a, b] = [groove[i]!, groove[i + 1]!];
    const run = subtract(b, a);
    // A step along the face is no slice.
    if (!(dot(run, down) > 1e-9 * Math.abs(dot(run, along)))) continue;
    const top = i === 0 ? { through, normal: down } : { through: a, normal: down };
    const bottom =
      i + 2 === groove.length
        ? { through: back.through, normal: times(back.out, -1) }
        : { through: b, normal: out };
    area += clippedArea(ring, [top, bottom, { through: a, normal: squareTo(run, into) }]);
  }
  return area;
}
