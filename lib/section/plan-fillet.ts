import { distance } from "@/lib/geometry";
import type { PlanePoint } from "@/lib/measure";
import { onSide, outwards, type FilletCorner } from "./fillet-corner";
import { arcOf, bestIndex, faceFirst, toeScore, waysRound, type Arc } from "./ring";

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
  corner: FilletCorner<"plane">,
  ring: readonly PlanePoint[],
  root: PlanePoint | null,
  hints: readonly [PlanePoint | null, PlanePoint | null],
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
