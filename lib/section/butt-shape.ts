import { polygonArea } from "@/lib/geometry";
import type { PlanePoint } from "@/lib/measure";
import { onBack, onFace, type ButtFrame } from "./butt-frame";
import { grooveDepths, meltedBehind } from "./groove";
import { THROUGH, type ButtPlan } from "./plan-butt";
import { curveOf, type Arc } from "./ring";
import { fusionShape, greatest, joinShapes, least, opposite, valuesAt, type SectionShape } from "./shape";

/** The joint faces as drawn; null where one is not. */
export type Grooves = readonly [readonly PlanePoint[] | null, readonly PlanePoint[] | null];

/** Every figure of a butt weld, in the unit of the points; NaN where the shape gives none. */
export function buttShape(
  frame: ButtFrame,
  plan: ButtPlan,
  ring: readonly PlanePoint[],
  grooves: Grooves,
  marked: PlanePoint | null,
): SectionShape {
  const face = curveOf(ring, plan.face);
  const [one, two] = [curveOf(ring, plan.sides[0]), curveOf(ring, plan.sides[1])];
  const root = plan.root === null ? [] : curveOf(ring, plan.root);
  const whole = [
    ...face,
    ...two.slice(1),
    ...[...root].reverse().slice(1),
    ...[...one].reverse().slice(1, -1),
  ];
  return joinShapes(
    faceShape(frame, plan, ring, face),
    depthShape(frame, plan, ring, [...one, ...two, ...root], marked),
    plan.root === null ? null : rootShape(frame, plan.root, ring, root),
    fusionShape(
      grooveDepths(frame, grooves[0], 0, plan.sides[0], ring, one),
      grooveDepths(frame, grooves[1], 1, plan.sides[1], ring, two),
    ),
    areaShape(frame, grooves, whole),
  );
}

/** Without the ends where there is more. */
const inside = <T>(list: readonly T[]): readonly T[] => (list.length > 2 ? list.slice(1, -1) : list);

function faceShape(
  frame: ButtFrame,
  plan: ButtPlan,
  ring: readonly PlanePoint[],
  face: readonly PlanePoint[],
): SectionShape {
  const x = (index: number): number => onFace(frame, ring[index]!).x;
  const heights = inside(face).map((point) => onFace(frame, point).h);
  const at = valuesAt(plan.face.indices.slice(1, -1), (index) => onFace(frame, ring[index]!).h);
  return {
    numbers: {
      "face-width": x(plan.toes[1]) - x(plan.toes[0]),
      reinforcement: greatest(heights),
      underfill: -least(heights),
    },
    extremes: { reinforcement: { sign: -1, at }, underfill: { sign: -1, at: opposite(at) } },
  };
}

function depthShape(
  frame: ButtFrame,
  plan: ButtPlan,
  ring: readonly PlanePoint[],
  behind: readonly PlanePoint[],
  marked: PlanePoint | null,
): SectionShape {
  const t = frame.thickness;
  const depth = (point: PlanePoint): number => -onFace(frame, point).h;
  // Where the deepest point was marked it is that; else the deepest of the outline.
  const deepest = marked === null ? greatest(behind.map(depth)) : depth(marked);
  const indices = [...plan.sides[0].indices, ...plan.sides[1].indices, ...(plan.root?.indices ?? [])];
  const at = valuesAt([...new Set(indices)], (index) => depth(ring[index]!));
  return {
    numbers: {
      thickness: frame.back === null ? NaN : (t ?? NaN),
      penetration: t === null ? deepest : Math.min(t, deepest),
      unreached: t === null ? NaN : t - deepest,
    },
    // Once through, the thickness is the figure, and no choice among picks goes into it.
    extremes:
      marked !== null || (t !== null && deepest >= THROUGH * t)
        ? {}
        : { penetration: { sign: -1, at }, unreached: { sign: 1, at: opposite(at) } },
  };
}

function rootShape(
  frame: ButtFrame,
  arc: Arc,
  ring: readonly PlanePoint[],
  curve: readonly PlanePoint[],
): SectionShape {
  const along = (index: number): number => onBack(frame, ring[index]!)?.x ?? NaN;
  const beyond = (point: PlanePoint): number => onBack(frame, point)?.g ?? NaN;
  const heights = inside(curve).map(beyond);
  const at = valuesAt(inside(arc.indices), (index) => beyond(ring[index]!));
  return {
    numbers: {
      "root-width": along(arc.indices.at(-1)!) - along(arc.indices[0]!),
      "root-reinforcement": greatest(heights),
      "root-concavity": -least(heights),
    },
    extremes: { "root-reinforcement": { sign: -1, at }, "root-concavity": { sign: -1, at: opposite(at) } },
  };
}

function areaShape(frame: ButtFrame, grooves: Grooves, whole: readonly PlanePoint[]): SectionShape {
  const area = polygonArea(whole);
  const fused = meltedBehind(frame, grooves[0], whole, 0) + meltedBehind(frame, grooves[1], whole, 1);
  return { numbers: { "weld-area": area, "fused-parent-area": fused, dilution: fused / area }, extremes: {} };
}
