import type { Pixel } from "../camera/camera";
import type { Truth } from "../truth";

/** An open hole or a ball of spatter as it was put into the scene. */
export interface TrueSpot {
  readonly kind: "hole" | "spatter";
  readonly x: number;
  readonly y: number;
  /** Of the circle of the same area, px. */
  readonly radiusPx: number;
}

const HOLES: readonly string[] = ["surface-porosity", "wormhole", "crater-pipe"];

/** Every hole and ball of a picture, from where the generator put them and not from how plain they came out. */
export function spotsOf({ imperfections, widthPx, heightPx }: Truth): readonly TrueSpot[] {
  return imperfections.flatMap(({ kind, outlinePx }): TrueSpot[] => {
    const is = HOLES.includes(kind) ? "hole" : kind === "spatter" ? "spatter" : null;
    if (is === null) return [];
    const { x, y, area } = middleOf(outlinePx);
    if (x < 0 || y < 0 || x > widthPx || y > heightPx) return [];
    return [{ kind: is, x, y, radiusPx: Math.sqrt(area / Math.PI) }];
  });
}

/** Centroid and area of a closed outline, by its triangles about its first place. */
function middleOf(outline: readonly Pixel[]): { x: number; y: number; area: number } {
  const [ox, oy] = outline[0]!;
  let [sx, sy, twice] = [0, 0, 0];
  outline.forEach(([ax, ay], i) => {
    const [bx, by] = outline[(i + 1) % outline.length]!;
    const cross = (ax - ox) * (by - oy) - (bx - ox) * (ay - oy);
    twice += cross;
    sx += (cross * (ax + bx - 2 * ox)) / 3;
    sy += (cross * (ay + by - 2 * oy)) / 3;
  });
  const safe = Math.abs(twice) < 1e-9 ? 1 : twice;
  return { x: ox + sx / safe, y: oy + sy / safe, area: Math.abs(twice) / 2 };
}
