import { forEachPoint, raiseMask, sampleHeight } from "../field/height-grid";
import { profileHeight } from "../geometry/profile";
import { fractalNoise1, fractalNoise2, smoothstep } from "../noise/noise";
import { lastBead, type PlanPoint, type SceneDraft } from "./draft";
import { planShare, toePlace } from "./undercut";

export interface OverlapOptions {
  readonly side: "left" | "right";
  readonly fromMm: number;
  readonly toMm: number;
  /** How far the metal lies over the plate beyond the true toe, mm. */
  readonly reachMm: number;
  readonly heightMm: number;
  readonly seed: number;
}

/** Metal rolled over the toe: a rounded roll with a dark crevice where it meets the plate. */
export function paintOverlap(draft: SceneDraft, options: OverlapOptions): void {
  const bead = lastBead(draft);
  const { grid } = draft;
  const outward = options.side === "left" ? -1 : 1;
  const plan = planShare(draft, options.side);
  const outer: PlanPoint[] = [];
  const inner: PlanPoint[] = [];
  for (let x = options.fromMm; x <= options.toMm; x += grid.stepMm) {
    const toes = bead.toesAt(x);
    if (toes === null) continue;
    const toe = options.side === "left" ? toes.leftMm : toes.rightMm;
    const half = (toes.rightMm - toes.leftMm) / 2;
    const ends =
      smoothstep(options.fromMm, options.fromMm + 4, x) * smoothstep(options.toMm, options.toMm - 4, x);
    const swell = Math.max(0.06, ends * (0.85 + 0.5 * fractalNoise1(x * 0.19, options.seed, 3)));
    const reach = options.reachMm * plan * swell;
    const height = (options.heightMm * (0.45 + 0.55 * swell)) / plan;
    const lip = toe + outward * reach;
    const start = toe - outward * Math.max(2.2 * plan, 1.4 * reach);
    const startLift = sampleHeight(grid, x, start) - profileHeight(draft.profile, start);
    const span = Math.abs(lip - start);
    const box = {
      x0: x - grid.stepMm * 0.499,
      x1: x + grid.stepMm * 0.5,
      y0: Math.min(start, lip) - 0.4,
      y1: Math.max(start, lip) + 0.4,
    };
    forEachPoint(grid, box, (k, _x, y) => {
      const beyond = (y - lip) * outward;
      if (beyond > 0) {
        if (beyond < 0.16) grid.h[k]! -= (0.12 * ends * (1 - beyond / 0.16)) / plan;
        if (beyond < 0.16) raiseMask(grid.mask.crack, k, ends * (0.9 - beyond * 5));
        return;
      }
      const r = Math.min(1, -beyond / span);
      const rise = (1 - (1 - r) ** 2.4) ** 0.5;
      const roll = (Math.max(height, startLift) * r + height * (1 - r)) * rise;
      const bare = profileHeight(draft.profile, y);
      const ripple = 0.8 * bead.ripples.heightAt(x, outward * (1.15 - 0.5 * r), half) * rise;
      const wrinkle = 0.05 * fractalNoise2(x * 1.1, y * 0.8, options.seed + 9, 3) * rise;
      grid.h[k] = Math.max(grid.h[k]!, bare + Math.min(roll, Math.max(height, startLift)) + wrinkle + ripple);
      raiseMask(grid.mask.bead, k, 1);
    });
    inner.push([x, toe]);
    outer.push([x, lip]);
  }
  const thin = Math.max(1, Math.round(0.4 / grid.stepMm));
  const keep = (p: PlanPoint[]): PlanPoint[] => p.filter((_, i) => i % thin === 0);
  draft.records.push({
    kind: "overlap",
    outline: [...keep(inner), ...keep(outer).reverse()],
    closed: true,
    sizes: { lengthMm: options.toMm - options.fromMm, reachMm: options.reachMm, heightMm: options.heightMm },
    place: toePlace(draft, options.side),
    stretch: "run",
  });
}
