import { forEachPoint, raiseMask, sampleHeight } from "../field/height-grid";
import { grindPattern } from "../materials/ground-strip";
import { noise2, smoothstep } from "../noise/noise";
import { outlineArea, type PlanPoint, type SceneDraft } from "./draft";

export interface UnderflushingOptions {
  readonly fromMm: number;
  readonly toMm: number;
  /** Half-width of what was ground, about y = 0, mm. */
  readonly halfWidthMm: number;
  /** Below the plate, mm. */
  readonly depthMm: number;
  readonly seed: number;
}

/** Floor left by the disc at the share `r` of its reach: level below the plate, then a ramp up to what it left standing. */
const floorAt = (r: number, depthMm: number): number =>
  -depthMm * smoothstep(0.82, 0.45, r) + 2.6 * smoothstep(0.76, 1.12, r) ** 1.4;

/** A cap on level plate that was ground away, and the plate on both sides of it with it. */
export function paintUnderflushing(draft: SceneDraft, options: UnderflushingOptions): void {
  const { grid } = draft;
  const { fromMm, toMm, halfWidthMm, depthMm, seed } = options;
  const [middle, half] = [(fromMm + toMm) / 2, (toMm - fromMm) / 2];
  const shareAt = (x: number, y: number): number =>
    (Math.abs((x - middle) / half) ** 3 + Math.abs(y / halfWidthMm) ** 3) ** (1 / 3) *
    (1 + 0.12 * noise2(x * 0.1, y * 0.1, seed));
  const box = { x0: fromMm - 8, x1: toMm + 8, y0: -1.5 * halfWidthMm, y1: 1.5 * halfWidthMm };
  forEachPoint(grid, box, (k, x, y) => {
    const r = shareAt(x, y);
    if (r > 1.2) return;
    const pattern = grindPattern(x, y, seed + 2);
    const floor = floorAt(r, depthMm) + 0.05 * noise2(x * 0.13, y * 0.13, seed + 3) + 0.009 * pattern;
    const left = grid.h[k]! - floor;
    if (left > 0) {
      grid.h[k] = floor;
      for (const name of ["bead", "heat", "soot", "fume", "slag", "spatter", "rust"] as const)
        grid.mask[name][k] = 0;
    }
    // Where the disc only just touched, its grains scratched the scale.
    const worn = smoothstep(-0.02, 0.02, left) + smoothstep(0.25, 0.5, pattern) * smoothstep(-0.12, 0, left);
    raiseMask(grid.mask.bare, k, worn * (0.84 + 0.16 * pattern));
  });
  recordGround(draft, options, shareAt);
}

/** Share of the disc's reach at which its floor comes up through the plate. */
const PLATE_SHARE = 0.8;

function recordGround(
  draft: SceneDraft,
  { fromMm, toMm }: UnderflushingOptions,
  shareAt: (x: number, y: number) => number,
): void {
  const middle = (fromMm + toMm) / 2;
  const outline = Array.from({ length: 48 }, (_, i): PlanPoint => {
    const angle = (2 * Math.PI * i) / 48;
    let t = 1;
    while (t < 200 && shareAt(middle + t * Math.cos(angle), t * Math.sin(angle)) < PLATE_SHARE) t += 0.05;
    return [middle + t * Math.cos(angle), t * Math.sin(angle)];
  });
  // As a straight edge across it would show: the lowest of the ground floor under the plate at z = 0.
  let lowest = 0;
  for (let x = fromMm; x < toMm; x += 0.5) lowest = Math.min(lowest, sampleHeight(draft.grid, x, 0));
  draft.records.push({
    kind: "underflushing",
    outline,
    closed: true,
    sizes: { depthMm: -lowest, areaMmSquared: outlineArea(outline) },
    place: "face",
    stretch: "run",
  });
}
