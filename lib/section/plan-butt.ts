import { distance } from "@/lib/geometry";
import type { PlanePoint } from "@/lib/measure";
import { onBack, onFace, type ButtFrame } from "./butt-frame";
import { arcOf, bestIndex, faceFirst, toeScore, waysRound, type Arc } from "./ring";

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
export const THROUGH = 0.98;

/** Toes as on a fillet; at the root a way off the back line counts twice, to either side. */
export function planButt(
  frame: ButtFrame,
  ring: readonly PlanePoint[],
  hints: readonly [PlanePoint | null, PlanePoint | null],
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
