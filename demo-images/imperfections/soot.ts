import { raiseMask } from "../field/height-grid";
import { fractalNoise2, smoothstep } from "../noise/noise";
import { createSlowField } from "../noise/slow-field";
import { lastBead, type SceneDraft } from "./draft";

export interface SootOptions {
  /** 0 none, 1 black beside the whole bead. */
  readonly soot: number;
  /** Pale tan fume dust, 0 to 1. */
  readonly fume: number;
  readonly reachMm: number;
  readonly seed: number;
}

/** Soot and fume dust beside a self-shielded bead, smeared along it; thick next to the toe and blown unevenly. */
export function paintSoot(draft: SceneDraft, options: SootOptions): void {
  const bead = lastBead(draft);
  const { grid } = draft;
  const { startMm, endMm, leftMm, rightMm } = bead.shape;
  const half = (rightMm - leftMm) / 2;
  const cloudAt = createSlowField(0.1, (x, y) => fractalNoise2(x * 0.09, y * 0.2, options.seed, 4));
  const driftAt = createSlowField(0.1, (x, y) => fractalNoise2(x * 0.05 + 9, y * 0.11, options.seed + 5, 4));
  for (let i = 0; i < grid.nx; i++) {
    const x = grid.x0 + i * grid.stepMm;
    // Beyond its ends the weld is taken as a point in its middle, so that the cloud closes round it without a seam.
    const along = Math.max(startMm + half - x, x - endMm + half, 0);
    const toes = bead.toesAt(Math.min(endMm - half, Math.max(startMm + half, x)));
    const middle = toes === null ? 0 : (toes.leftMm + toes.rightMm) / 2;
    const reach = toes === null ? half : (toes.rightMm - toes.leftMm) / 2;
    for (let j = 0; j < grid.ny; j++) {
      const y = grid.y0 + j * grid.stepMm;
      const d = Math.max(0, Math.sqrt(along * along + (y - middle) * (y - middle)) - reach) / options.reachMm;
      if (d > 2) continue;
      const k = j * grid.nx + i;
      const cloud = cloudAt(x, y);
      const near = 1 - grid.mask.bead[k]! / 255;
      const lift = 0.25 + 0.75 * near;
      raiseMask(grid.mask.soot, k, options.soot * lift * smoothstep(1.5, 0.1, d + 0.75 * cloud));
      const drift = driftAt(x, y);
      const band = smoothstep(0.1, 0.6, d) * smoothstep(1.9, 0.7, d + 0.8 * drift);
      raiseMask(
        grid.mask.fume,
        k,
        options.fume * lift * band * (0.75 + 0.3 * fractalNoise2(x * 1.5, y * 1.5, options.seed + 6, 2)),
      );
    }
  }
}
