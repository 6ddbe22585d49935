import { distance, dot, polygonArea, projectOnPolyline, subtract, times, type Point } from "@/lib/geometry";
import { clippedArea } from "./clip-area";
import { onSide, outwards, type FilletCorner } from "./fillet-corner";
import { arcOf, bestIndex, curveOf, faceFirst, toeScore, waysRound, type Arc } from "./ring";
import { depthsBetween, END_SHARE, greatest, least, type SectionShape } from "./shape";

/** How the outline of a fillet falls into its parts: decided once on the points as picked. */
export interface FilletPlan {
  readonly toes: readonly [number, number];
  /** From toe 1 to toe 2 over the face. */
  readonly face: Arc;
  /** From either toe to the root. */
  readonly fusion: readonly [Arc, Arc];
}

/**
 * A toe is the point of the outline farthest along its plate (`toeScore`). The face is the way
 * round between the toes that lies farther from the corner, and the root the point that lies farthest back, or the one
 * nearest to where the root was marked.
 *
 * @param hints Where the person put the toes, in the same unit; null: to be found.
 */
export function planFillet(
  corner: FilletCorner,
  ring: readonly Point[],
  root: Point | null,
  hints: readonly [Point | null, Point | null],
): FilletPlan | null {
  const toe = (side: 0 | 1): number => {
    const hint = hints[side];
    return bestIndex(ring, (point) => {
      if (hint !== null) return -distance(point, hint);
      const { s, p } = onSide(corner, side, point);
      return toeScore(s, p);
    });
  };
  const toes = [toe(0), toe(1)] as const;
  if (toes[0] === toes[1] || toes.some((index, side) => !(onSide(corner, side as 0 | 1, ring[index]!).s > 0)))
    return null;
  const [face, behind] = faceFirst(waysRound(ring.length, ...toes), (index) =>
    outwards(corner, ring[index]!),
  );
  if (behind.length < 3) return null;
  const inner = behind.slice(1, -1);
  const deepest =
    1 +
    bestIndex(inner, (index) =>
      root === null ? -outwards(corner, ring[index]!) : -distance(ring[index]!, root),
    );
  return {
    toes,
    face: arcOf(ring, face),
    fusion: [arcOf(ring, behind.slice(0, deepest + 1)), arcOf(ring, behind.slice(deepest).reverse())],
  };
}

/** Every figure of a fillet, in the unit of the points; NaN where the shape gives none. */
export function filletShape(
  corner: FilletCorner,
  plan: FilletPlan,
  ring: readonly Point[],
  root: Point | null,
): SectionShape {
  const legs = plan.toes.map((index, side) => onSide(corner, side as 0 | 1, ring[index]!).s) as [
    number,
    number,
  ];
  const face = curveOf(ring, plan.face);
  const fusion = plan.fusion.map((arc) => curveOf(ring, arc)) as [readonly Point[], readonly Point[]];
  const whole = [...face, ...[...fusion[1]].slice(1), ...[...fusion[0]].reverse().slice(1, -1)];
  const area = polygonArea(whole);
  const halves = corner.sides.map(({ out }) => ({ through: corner.at, normal: out }));
  const laid = clippedArea(whole, halves);
  const chord = chordHeights(corner, ring, plan, face);
  const inner = plan.face.indices.slice(1, -1);
  const triangle = inscribed(corner, legs, face);
  const sides = [0, 1].map((side) =>
    sideDepths(corner, side as 0 | 1, legs[side]!, plan.fusion[side]!, ring, fusion[side]!),
  );
  const from = (point: Point) => inner.map((index) => ({ index, value: distance(ring[index]!, point) }));
  return {
    numbers: {
      "leg-1": legs[0],
      "leg-2": legs[1],
      "leg-difference": legs[0] - legs[1],
      "face-width": distance(ring[plan.toes[0]]!, ring[plan.toes[1]]!),
      "joint-angle": corner.angleDeg,
      throat: reach(corner.at, face),
      "nominal-throat": triangle,
      ...(root === null
        ? {}
        : {
            "throat-with-penetration": reach(root, face),
            "root-penetration": -outwards(corner, root),
          }),
      convexity: chord.greatest,
      concavity: chord.least,
      "fusion-1-greatest": sides[0]!.greatest,
      "fusion-1-least": sides[0]!.least,
      "fusion-2-greatest": sides[1]!.greatest,
      "fusion-2-least": sides[1]!.least,
      "weld-area": area,
      "fused-parent-area": area - laid,
      dilution: (area - laid) / area,
    },
    extremes: {
      throat: { sign: 1, at: from(corner.at) },
      ...(root === null ? {} : { "throat-with-penetration": { sign: 1 as const, at: from(root) } }),
      "nominal-throat": {
        sign: 1,
        at: [
          ...inner.map((index) => ({ index, value: outwards(corner, ring[index]!) })),
          ...plan.toes.map((index, side) => ({ index, value: legs[side]! * halfCosine(corner) })),
        ],
      },
      convexity: { sign: -1, at: chord.at },
      concavity: { sign: -1, at: chord.at.map(({ index, value }) => ({ index, value: -value })) },
      "fusion-1-greatest": { sign: -1, at: sides[0]!.at },
      "fusion-1-least": { sign: 1, at: sides[0]!.at },
      "fusion-2-greatest": { sign: -1, at: sides[1]!.at },
      "fusion-2-least": { sign: 1, at: sides[1]!.at },
    },
  };
}

const halfCosine = ({ angleDeg }: FilletCorner): number => Math.cos((angleDeg * Math.PI) / 360);

/** Least distance from a point to a path. */
function reach(point: Point, path: readonly Point[]): number {
  return Math.abs(projectOnPolyline(point, path)?.offset ?? NaN);
}

/**
 * Height of the largest triangle with its tip in the corner and equal sides along the plates that lies in the weld: it
 * ends where the face or the nearer toe ends it.
 */
function inscribed(corner: FilletCorner, legs: readonly [number, number], face: readonly Point[]): number {
  const between = face
    .slice(1, -1)
    .filter((point) => onSide(corner, 0, point).p >= 0 && onSide(corner, 1, point).p >= 0)
    .map((point) => outwards(corner, point));
  return Math.min(legs[0] * halfCosine(corner), legs[1] * halfCosine(corner), ...between);
}

/** How far the face stands over the line from toe to toe, and how far below it. */
function chordHeights(
  corner: FilletCorner,
  ring: readonly Point[],
  plan: FilletPlan,
  face: readonly Point[],
) {
  const [a, b] = plan.toes.map((index) => ring[index]!) as [Point, Point];
  const chord = subtract(b, a);
  const square = times({ x: -chord.y, y: chord.x }, 1 / distance(a, b));
  const outside = dot(square, corner.bisector) < 0 ? times(square, -1) : square;
  const height = (point: Point): number => dot(subtract(point, a), outside);
  const heights = face.slice(1, -1).map(height);
  return {
    greatest: heights.length === 0 ? 0 : Math.max(...heights),
    least: heights.length === 0 ? 0 : -Math.min(...heights),
    at: plan.face.indices.slice(1, -1).map((index) => ({ index, value: height(ring[index]!) })),
  };
}

function sideDepths(
  corner: FilletCorner,
  side: 0 | 1,
  leg: number,
  arc: Arc,
  ring: readonly Point[],
  curve: readonly Point[],
) {
  const [low, high] = [END_SHARE * leg, (1 - END_SHARE) * leg];
  const below = (point: Point) => {
    const { s, p } = onSide(corner, side, point);
    return { s, d: -p };
  };
  const depths = depthsBetween(curve.map(below), low, high);
  return {
    greatest: greatest(depths),
    least: least(depths),
    at: arc.indices
      .map((index) => ({ index, ...below(ring[index]!) }))
      .filter(({ s }) => s >= low && s <= high)
      .map(({ index, d }) => ({ index, value: d })),
  };
}
