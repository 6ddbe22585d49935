import { forEachPoint, raiseMask, type GridArea } from "../field/height-grid";
import { smoothstep } from "../noise/noise";
import { createRandom, type Random } from "../noise/random";
import { centreAt, lastBead, leaningRing, leanShare, outlineArea, ring, type SceneDraft } from "./draft";

export interface Pore {
  readonly x: number;
  readonly y: number;
  readonly diameterMm: number;
  readonly depthMm: number;
}

const boxAround = (x: number, y: number, reach: number): GridArea => ({
  x0: x - reach,
  x1: x + reach,
  y0: y - reach,
  y1: y + reach,
});

/** A round open hole with a lip raised by the gas that left it. */
export function paintPore(
  draft: SceneDraft,
  pore: Pore,
  random: Random,
  kind: "surface-porosity" | "crater-pipe",
): void {
  const radius = pore.diameterMm / 2;
  const phase = random.between(0, 6.28);
  const squash = random.between(0, 0.1);
  const radiusAt = (a: number): number =>
    radius * (1 + squash * Math.cos(2 * (a - phase)) + 0.04 * Math.sin(3 * a + phase));
  const { grid } = draft;
  const lean = leanShare(draft, pore.x, pore.y, Math.max(radius, 0.5));
  const box = boxAround(pore.x, pore.y, radius * 1.9);
  // Slopes are read across two grid steps, which darkens half a step outside the wall: the wall stands that much in.
  const shrink = Math.min(0.3 * radius, 0.5 * grid.stepMm);
  const lip = Math.min(0.06, 0.045 * pore.diameterMm);
  forEachPoint(grid, box, (k, x, y) => {
    const dx = x - pore.x;
    const dy = (y - pore.y) / lean;
    const r = Math.hypot(dx, dy) / (radiusAt(Math.atan2(dy, dx)) - shrink);
    if (r > 1.9) return;
    const bowl = r < 1 ? pore.depthMm * Math.sqrt(1 - r * r * r * r) : 0;
    const rim = lip * Math.exp(-(((r - 1.16) / 0.2) ** 2));
    grid.h[k]! += rim - bowl / lean;
    raiseMask(grid.mask.hole, k, smoothstep(1.02, 0.86, r));
  });
  draft.records.push({
    kind,
    outline: leaningRing(pore.x, pore.y, lean, radiusAt),
    closed: true,
    sizes: {
      diameterMm: pore.diameterMm,
      depthMm: pore.depthMm,
      areaMmSquared: outlineArea(ring(0, 0, radiusAt)),
    },
    place: "face",
    stretch: kind === "crater-pipe" ? "crater" : "run",
  });
}

export interface PorosityOptions {
  readonly count: number;
  /** Median diameter; left out, that of `usualPorosity`. */
  readonly medianMm?: number;
  readonly layout: "single" | "scattered" | "clustered" | "linear";
  readonly fromMm: number;
  readonly toMm: number;
  readonly seed: number;
}

/**
 * Spread is that of the logarithm of a log-normal. LoHi-WELD (Block et al., IEEE Access 2024) reports a median pore width
 * near 1.2 mm on beads of 60 mm, and pores in a quarter of its images.
 */
export const usualPorosity = { medianMm: 1.2, spread: 0.32, leastMm: 0.3, mostMm: 3.2 } as const;

export function drawPoreDiameter(random: Random, medianMm: number = usualPorosity.medianMm): number {
  const drawn = random.logNormal(medianMm, usualPorosity.spread);
  return Math.min(usualPorosity.mostMm, Math.max(usualPorosity.leastMm, drawn));
}

export function paintPorosity(draft: SceneDraft, options: PorosityOptions): void {
  const random = createRandom(options.seed);
  const bead = lastBead(draft);
  const placed: Pore[] = [];
  // A single pore or a cluster keeps clear of the ends of its stretch.
  const inset = 0.15 * (options.toMm - options.fromMm);
  const middle = random.between(options.fromMm + inset, options.toMm - inset);
  const count = options.layout === "single" ? 1 : options.count;
  for (let tries = 0; placed.length < count && tries < count * 40; tries++) {
    const diameterMm = drawPoreDiameter(random, options.medianMm);
    const x =
      options.layout === "clustered"
        ? random.normal(middle, 2.2)
        : random.between(options.fromMm, options.toMm);
    const toes = bead.toesAt(x);
    if (toes === null) continue;
    const half = (toes.rightMm - toes.leftMm) / 2;
    const across = options.layout === "linear" ? random.normal(0, 0.07) : random.normal(0, 0.38);
    if (Math.abs(across) > 0.85 - diameterMm / half / 2) continue;
    const y = centreAt(bead, x) + across * half;
    if (placed.some((p) => Math.hypot(p.x - x, p.y - y) < (p.diameterMm + diameterMm) * 0.56 + 0.1)) continue;
    const pore = { x, y, diameterMm, depthMm: Math.min(2.2, diameterMm * random.between(0.7, 1.3)) };
    placed.push(pore);
    paintPore(draft, pore, random, "surface-porosity");
  }
}

/** One deep hole at the bottom of the end crater. */
export function paintCraterPipe(draft: SceneDraft, diameterMm: number, seed: number): void {
  const bead = lastBead(draft);
  const half = (bead.shape.rightMm - bead.shape.leftMm) / 2;
  const x = bead.shape.endMm - 1.25 * half;
  const pore = { x, y: centreAt(bead, x), diameterMm, depthMm: 2.4 };
  paintPore(draft, pore, createRandom(seed), "crater-pipe");
}
