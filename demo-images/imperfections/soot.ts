import { raiseMask } from "../field/height-grid";
import { fractalNoise2, smoothstep } from "../noise/noise";
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
  for (let i = 0; i < grid.nx; i++) {
    const x = grid.x0 + i * grid.stepMm;
    const along = Math.max(startMm - x, x - endMm, 0);
    const toes = bead.toesAt(x) ?? { leftMm: (leftMm + rightMm) / 2, rightMm: (leftMm + rightMm) / 2 };
    for (let j = 0; j < grid.ny; j++) {
      const y = grid.y0 + j * grid.stepMm;
      const across = Math.max(toes.leftMm - y, y - toes.rightMm, 0);
      const d = Math.hypot(along, across) / options.reachMm;
      if (d > 2) continue;
      const k = j * grid.nx + i;
      const cloud = fractalNoise2(x * 0.09, y * 0.2, options.seed, 4);
      const near = 1 - grid.mask.bead[k]! / 255;
      const lift = 0.25 + 0.75 * near;
      raiseMask(grid.mask.soot, k, options.soot * lift * smoothstep(1.5, 0.1, d + 0.75 * cloud));
      const drift = fractalNoise2(x * 0.05 + 9, y * 0.11, options.seed + 5, 4);
      const band = smoothstep(0.1, 0.6, d) * smoothstep(1.9, 0.7, d + 0.8 * drift);
      raiseMask(
        grid.mask.fume,
        k,
        options.fume * lift * band * (0.75 + 0.3 * fractalNoise2(x * 1.5, y * 1.5, options.seed + 6, 2)),
      );
    }
  }
}
