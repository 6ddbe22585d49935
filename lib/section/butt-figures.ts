import { distance, polygonArea, type Point } from "@/lib/geometry";
import { onBack, onFace, type ButtFrame } from "./butt-frame";
import { grooveDepths, meltedBehind } from "./groove";
import { arcOf, bestIndex, curveOf, faceFirst, toeScore, waysRound, type Arc } from "./ring";
import { greatest, least, type Extremes, type SectionShape } from "./shape";
import type { SectionFigureId } from "./types";

/** How the outline of a butt weld falls into its parts: decided once on the points as picked. */
export interface ButtPlan {
  readonly toes: readonly [number, number];
  /** From toe 1 to toe 2 over the face. */
  readonly face: Arc;
  /** From either toe down its plate, to the toe of the root or to the deepest point. */
  readonly sides: readonly [Arc, Arc];
  /** From side 1 to side 2 along the back; null: the back was not reached, or is not known. */
  readonly root: Arc | null;
}

/** Deeper than this share of the thickness counts as through: an edge melted flush is picked to either side. Own choice. */
const THROUGH = 0.98;

/** Toes as on a fillet; at the root a way off the back line counts twice, to either side. */
export function planButt(
  frame: ButtFrame,
  ring: readonly Point[],
  hints: readonly [Point | null, Point | null],
): ButtPlan | null {
  const toe = (side: 0 | 1): number => {
    const hint = hints[side];
    return bestIndex(ring, (point) => {
      if (hint !== null) return -distance(point, hint);
      const { x, h } = onFace(frame, point);
      return toeScore(side === 0 ? -x : x, h);
    });
  };
  const toes = [toe(0), toe(1)] as const;
  if (toes[0] === toes[1]) return null;
  const height = (index: number): number => onFace(frame, ring[index]!).h;
  const [face, behind] = faceFirst(waysRound(ring.length, ...toes), height);
  if (behind.length < 3) return null;
  const inner = behind.slice(1, -1);
  const deepest = 1 + bestIndex(inner, (index) => -height(index));
  const through = frame.thickness !== null && -height(behind[deepest]!) >= THROUGH * frame.thickness;
  const rootToe = (side: 0 | 1): number =>
    1 +
    bestIndex(inner, (index) => {
      const { x = 0, g = 0 } = onBack(frame, ring[index]!) ?? {};
      return (side === 0 ? -x : x) - 2 * Math.abs(g);
    });
  const [first, second] = through ? [rootToe(0), rootToe(1)] : [deepest, deepest];
  if (first > second) return null;
  return {
    toes,
    face: arcOf(ring, face),
    sides: [arcOf(ring, behind.slice(0, first + 1)), arcOf(ring, behind.slice(second).reverse())],
    root: through && first < second ? arcOf(ring, behind.slice(first, second + 1)) : null,
  };
}

/** Every figure of a butt weld, in the unit of the points; NaN where the shape gives none. */
export function buttShape(
  frame: ButtFrame,
  plan: ButtPlan,
  ring: readonly Point[],
  grooves: readonly [readonly Point[] | null, readonly Point[] | null],
): SectionShape {
  const face = curveOf(ring, plan.face);
  const sides = plan.sides.map((arc) => curveOf(ring, arc)) as [readonly Point[], readonly Point[]];
  const root = plan.root === null ? [] : curveOf(ring, plan.root);
  const whole = [
    ...face,
    ...[...sides[1]].slice(1),
    ...[...root].reverse().slice(1),
    ...[...sides[0]].reverse().slice(1, -1),
  ];
  const area = polygonArea(whole);
  const height = (point: Point): number => onFace(frame, point).h;
  const heights = inside(face).map(height);
  const low = -Math.min(...[...sides[0], ...sides[1], ...root].map(height));
  const t = frame.thickness;
  const melted = [0, 1].map((side) => meltedBehind(frame, grooves[side as 0 | 1], whole, side as 0 | 1));
  const fused = melted[0]! + melted[1]!;
  const x = (index: number): number => onFace(frame, ring[index]!).x;
  const depths = [0, 1].map((side) =>
    grooveDepths(
      frame,
      grooves[side as 0 | 1],
      side as 0 | 1,
      plan.sides[side as 0 | 1]!,
      ring,
      sides[side as 0 | 1]!,
    ),
  );
  const faceAt = valuesAt(plan.face.indices.slice(1, -1), (index) => height(ring[index]!));
  const behind = [...plan.sides[0]!.indices, ...plan.sides[1]!.indices, ...(plan.root?.indices ?? [])];
  const depthAt = valuesAt([...new Set(behind)], (index) => -height(ring[index]!));
  const rootParts = plan.root === null ? null : rootShape(frame, plan.root, ring, root);
  return {
    numbers: {
      thickness: frame.back === null ? NaN : (t ?? NaN),
      penetration: t === null ? low : Math.min(t, low),
      unreached: t === null ? NaN : t - low,
      "face-width": x(plan.toes[1]) - x(plan.toes[0]),
      reinforcement: greatest(heights),
      underfill: -least(heights),
      ...rootParts?.numbers,
      "fusion-1-greatest": depths[0]!.greatest,
      "fusion-1-least": depths[0]!.least,
      "fusion-2-greatest": depths[1]!.greatest,
      "fusion-2-least": depths[1]!.least,
      "weld-area": area,
      "fused-parent-area": fused,
      dilution: fused / area,
    },
    extremes: {
      reinforcement: { sign: -1, at: faceAt },
      underfill: { sign: -1, at: opposite(faceAt) },
      ...(t !== null && low >= THROUGH * t
        ? {}
        : {
            penetration: { sign: -1 as const, at: depthAt },
            unreached: { sign: 1 as const, at: opposite(depthAt) },
          }),
      ...rootParts?.extremes,
      ...fusionExtremes(depths[0]!.at, depths[1]!.at),
    },
  };
}

type Valued = readonly { readonly index: number; readonly value: number }[];

const valuesAt = (indices: readonly number[], of: (index: number) => number): Valued =>
  indices.map((index) => ({ index, value: of(index) }));
const opposite = (list: Valued): Valued => list.map(({ index, value }) => ({ index, value: -value }));
/** Without the ends where there is more. */
const inside = <T>(list: readonly T[]): readonly T[] => (list.length > 2 ? list.slice(1, -1) : list);

function rootShape(
  frame: ButtFrame,
  arc: Arc,
  ring: readonly Point[],
  curve: readonly Point[],
): SectionShape {
  const beyond = (point: Point): number => onBack(frame, point)?.g ?? NaN;
  const along = (index: number): number => onBack(frame, ring[index]!)?.x ?? NaN;
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

function fusionExtremes(one: Valued, two: Valued): Extremes {
  const entry = (id: SectionFigureId, sign: 1 | -1, at: Valued): Extremes => ({ [id]: { sign, at } });
  return {
    ...entry("fusion-1-greatest", -1, one),
    ...entry("fusion-1-least", 1, one),
    ...entry("fusion-2-greatest", -1, two),
    ...entry("fusion-2-least", 1, two),
  };
}
