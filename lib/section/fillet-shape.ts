import { distance, polygonArea } from "@/lib/geometry";
import type { PlanePoint } from "@/lib/measure";
import { clippedArea } from "./clip-area";
import { onSide, outwards, type FilletCorner } from "./fillet-corner";
import { chordHeights, halfCosine, inscribed, reach } from "./fillet-face";
import type { FilletPlan } from "./plan-fillet";
import { curveOf } from "./ring";
import { depthsOf, END_SHARE, fusionShape, joinShapes, opposite, valuesAt, type SectionShape } from "./shape";

/** Every figure of a fillet, in the unit of the points; NaN where the shape gives none. */
export function filletShape(
  corner: FilletCorner<"plane">,
  plan: FilletPlan,
  ring: readonly PlanePoint[],
  root: PlanePoint | null,
): SectionShape {
  const face = curveOf(ring, plan.face);
  const [one, two] = [curveOf(ring, plan.fusion[0]), curveOf(ring, plan.fusion[1])];
  const legs = [legOf(corner, plan, ring, 0), legOf(corner, plan, ring, 1)] as const;
  const depths = (side: 0 | 1, curve: readonly PlanePoint[]) =>
    depthsOf(
      plan.fusion[side],
      ring,
      curve,
      [END_SHARE * legs[side], (1 - END_SHARE) * legs[side]],
      (point) => {
        const { s, p } = onSide(corner, side, point);
        return { s, d: -p };
      },
    );
  return joinShapes(
    legShape(corner, plan, ring, legs),
    throatShape(corner, plan, ring, face, legs),
    root === null ? null : rootShape(corner, plan, ring, face, root),
    fusionShape(depths(0, one), depths(1, two)),
    areaShape(corner, [...face, ...two.slice(1), ...[...one].reverse().slice(1, -1)]),
  );
}

function legOf(
  corner: FilletCorner<"plane">,
  plan: FilletPlan,
  ring: readonly PlanePoint[],
  side: 0 | 1,
): number {
  return onSide(corner, side, ring[plan.toes[side]]!).s;
}

type Legs = readonly [number, number];

function legShape(
  corner: FilletCorner<"plane">,
  plan: FilletPlan,
  ring: readonly PlanePoint[],
  legs: Legs,
): SectionShape {
  return {
    numbers: {
      "leg-1": legs[0],
      "leg-2": legs[1],
      "leg-difference": legs[0] - legs[1],
      "face-width": distance(ring[plan.toes[0]]!, ring[plan.toes[1]]!),
      "joint-angle": corner.angleDeg,
    },
    extremes: {},
  };
}

function throatShape(
  corner: FilletCorner<"plane">,
  plan: FilletPlan,
  ring: readonly PlanePoint[],
  face: readonly PlanePoint[],
  legs: Legs,
): SectionShape {
  const inner = plan.face.indices.slice(1, -1);
  const chord = chordHeights(corner, ring, plan, face);
  return {
    numbers: {
      throat: reach(corner.at, face),
      "nominal-throat": inscribed(corner, legs, face),
      convexity: chord.over,
      concavity: chord.under,
    },
    extremes: {
      throat: { sign: 1, at: valuesAt(inner, (index) => distance(ring[index]!, corner.at)) },
      "nominal-throat": {
        sign: 1,
        at: [
          ...valuesAt(inner, (index) => outwards(corner, ring[index]!)),
          ...plan.toes.map((index, side) => ({ index, value: legs[side as 0 | 1] * halfCosine(corner) })),
        ],
      },
      convexity: { sign: -1, at: chord.at },
      concavity: { sign: -1, at: opposite(chord.at) },
    },
  };
}

function rootShape(
  corner: FilletCorner<"plane">,
  plan: FilletPlan,
  ring: readonly PlanePoint[],
  face: readonly PlanePoint[],
  root: PlanePoint,
): SectionShape {
  const inner = plan.face.indices.slice(1, -1);
  return {
    numbers: {
      "throat-with-penetration": reach(root, face),
      "root-penetration": -outwards(corner, root),
    },
    extremes: {
      "throat-with-penetration": { sign: 1, at: valuesAt(inner, (index) => distance(ring[index]!, root)) },
    },
  };
}

/** What lies in neither plate was laid; the rest was plate before. */
function areaShape(corner: FilletCorner<"plane">, whole: readonly PlanePoint[]): SectionShape {
  const area = polygonArea(whole);
  const laid = clippedArea(
    whole,
    corner.sides.map(({ out }) => ({ through: corner.at, normal: out })),
  );
  return {
    numbers: { "weld-area": area, "fused-parent-area": area - laid, dilution: (area - laid) / area },
    extremes: {},
  };
}
