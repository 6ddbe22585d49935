import { forEachPoint, raiseMask, sampleHeight } from "../field/height-grid";
import { noise2 } from "../noise/noise";
import { createRandom } from "../noise/random";
import { centreAt, lastBead, ring, type SceneDraft } from "./draft";

export interface SpatterOptions {
  readonly count: number;
  /** Median diameter. LoHi-WELD (Block et al., IEEE Access 2024) reports deposits about 1.4 mm wide. */
  readonly medianMm: number;
  /** How far from the toe most of it lies, mm. */
  readonly spreadMm: number;
  readonly seed: number;
}

export const usualSpatter = { medianMm: 0.95, spread: 0.55, leastMm: 0.25, mostMm: 3 } as const;

/** Balls of metal stuck to plate and bead: more near the toes, each sunk a little and a bit out of round. */
export function paintSpatter(draft: SceneDraft, options: SpatterOptions): void {
  const random = createRandom(options.seed);
  const bead = lastBead(draft);
  const { grid } = draft;
  const { startMm, endMm } = bead.shape;
  for (let n = 0; n < options.count; n++) {
    const x = random.between(startMm - 4, endMm + 5);
    const toes = bead.toesAt(x) ?? { leftMm: centreAt(bead, x) - 0.5, rightMm: centreAt(bead, x) + 0.5 };
    const far = -options.spreadMm * Math.log(1 - random.next() * 0.97);
    const y = random.chance(0.12)
      ? random.between(toes.leftMm, toes.rightMm)
      : random.chance(0.5)
        ? toes.leftMm - 0.4 - far
        : toes.rightMm + 0.4 + far;
    const diameterMm = Math.min(
      usualSpatter.mostMm,
      Math.max(usualSpatter.leastMm, random.logNormal(options.medianMm, usualSpatter.spread)),
    );
    const radius = diameterMm / 2;
    const sunk = random.between(0.3, 0.75);
    const stretch = 1 + 0.45 * random.next() ** 3;
    const turn = random.between(0, Math.PI);
    const shade = random.between(0.05, 1);
    if (
      x < grid.x0 + 2 ||
      y < grid.y0 + 2 ||
      x > grid.x0 + grid.nx * grid.stepMm - 2 ||
      y > grid.y0 + grid.ny * grid.stepMm - 2
    )
      continue;
    const ground = sampleHeight(grid, x, y);
    const box = { x0: x - 2 * radius, x1: x + 2 * radius, y0: y - 2 * radius, y1: y + 2 * radius };
    const tilt = (sampleHeight(grid, x, y + radius) - sampleHeight(grid, x, y - radius)) / diameterMm;
    forEachPoint(grid, box, (k, px, py) => {
      const a = (px - x) * Math.cos(turn) + (py - y) * Math.sin(turn);
      const b = (py - y) * Math.cos(turn) - (px - x) * Math.sin(turn);
      const lump = 1 + 0.07 * noise2(px * (1.3 / radius) + n, py * (1.3 / radius), options.seed);
      const r = (Math.hypot(a / stretch, b * Math.sqrt(stretch)) / radius) * lump;
      if (r < 1) {
        const top = ground + tilt * (py - y) + radius * (Math.sqrt(1 - r * r * 0.985) + 0.25 - 0.8 * sunk);
        if (top > grid.h[k]!) grid.h[k] = top;
        raiseMask(grid.mask.spatter, k, shade);
      } else if (r < 1.7) {
        raiseMask(grid.mask.soot, k, 0.4 * (1.7 - r));
      }
    });
    draft.records.push({
      kind: "spatter",
      outline: ring(x, y, () => radius, 14),
      closed: true,
      sizes: { diameterMm },
      place: y > toes.leftMm && y < toes.rightMm ? "face" : "beside",
      stretch: null,
    });
  }
}
