import { forEachPoint, raiseMask } from "../field/height-grid";
import { fractalNoise1, smoothstep } from "../noise/noise";
import { lastBead, type PlanPoint, type SceneDraft } from "./draft";

export interface UndercutOptions {
  readonly side: "left" | "right";
  readonly fromMm: number;
  readonly toMm: number;
  readonly depthMm: number;
  /** Across the plate's own surface, mm. */
  readonly widthMm: number;
  /** 0 continuous, 1 in separate bites. */
  readonly broken: number;
  readonly seed: number;
}

/** Below this share of its depth the groove cannot be told from the toe, and a bite ends. */
const LEAST_SHARE = 0.08;

/** How much of its full depth the groove has at x, 0 to about 1.1. */
function createStrength({ fromMm, toMm, broken, seed }: UndercutOptions): (x: number) => number {
  return (x) => {
    const ends = smoothstep(fromMm, fromMm + 2.5, x) * smoothstep(toMm, toMm - 2.5, x);
    const bite = smoothstep(-0.15, 0.25, fractalNoise1(x * 0.16, seed, 2) + 0.4 * (1 - broken));
    const swell = 0.8 + 0.3 * fractalNoise1(x * 0.6, seed + 3, 3);
    return Math.max(0, ends * (1 - broken + broken * bite) * swell);
  };
}

/** The groove at one place along the weld; widths in plan millimetres. */
interface Cut {
  readonly x: number;
  readonly toe: number;
  readonly outward: 1 | -1;
  readonly width: number;
  readonly strength: number;
}

/** Cuts one column of the grid: steep at the weld, running out into the plate, with a bright floor. */
function cutColumn(draft: SceneDraft, { x, toe, outward, width, strength }: Cut, depthMm: number): void {
  const { grid } = draft;
  const step = grid.stepMm;
  const box = { x0: x - step * 0.499, x1: x + step * 0.5, y0: toe - width * 1.6, y1: toe + width * 1.6 };
  forEachPoint(grid, box, (k, _x, y) => {
    const r = ((y - toe) * outward) / width;
    if (r < -0.3 || r > 1.5) return;
    const groove = r < 0.3 ? smoothstep(-0.3, 0.3, r) : r < 1 ? 1 - smoothstep(0.3, 1, r) : 0;
    const bank = 0.09 * strength * Math.exp(-(((r - 1.12) / 0.2) ** 2));
    grid.h[k]! += bank - depthMm * strength * groove;
    if (r > -0.1 && r < 0.95) raiseMask(grid.mask.bare, k, 0.8 * strength);
  });
}

/** A groove in the plate just outside a toe, in one piece or in bites; each bite is an imperfection of its own. */
export function paintUndercut(draft: SceneDraft, options: UndercutOptions): void {
  const bead = lastBead(draft);
  const outward = options.side === "left" ? -1 : 1;
  const plan = planShare(draft, options.side);
  const strengthAt = createStrength(options);
  let bite: Cut[] = [];
  const close = (): void => {
    if (bite.length > 1) recordBite(draft, options, bite, plan);
    bite = [];
  };
  for (let x = options.fromMm; x <= options.toMm; x += draft.grid.stepMm) {
    const toes = bead.toesAt(x);
    if (toes === null) continue;
    const strength = strengthAt(x);
    const toe = options.side === "left" ? toes.leftMm : toes.rightMm;
    const cut: Cut = { x, toe, outward, width: options.widthMm * plan * (0.45 + 0.55 * strength), strength };
    // Square to a leaning plate the groove is `plan` times as deep as straight down.
    cutColumn(draft, cut, options.depthMm / plan);
    if (strength > LEAST_SHARE) bite.push(cut);
    else close();
  }
  close();
}

function recordBite(draft: SceneDraft, options: UndercutOptions, bite: readonly Cut[], plan: number): void {
  const thin = Math.max(1, Math.round(0.4 / draft.grid.stepMm));
  const kept = bite.filter((_, i) => i % thin === 0 || i === bite.length - 1);
  const inner = kept.map((c): PlanPoint => [c.x, c.toe - 0.15 * c.outward * c.width]);
  const outer = kept.map((c): PlanPoint => [c.x, c.toe + c.outward * c.width]);
  const { startMm, endMm } = lastBead(draft).shape;
  const lengthMm = bite[bite.length - 1]!.x - bite[0]!.x;
  draft.records.push({
    kind: "undercut",
    outline: [...inner, ...outer.reverse()],
    closed: true,
    sizes: {
      lengthMm,
      widthMm: (1.15 * Math.max(...bite.map((c) => c.width))) / plan,
      depthMm: options.depthMm * Math.max(...bite.map((c) => c.strength)),
    },
    place: toePlace(draft, options.side),
    stretch: lengthMm > 0.9 * (endMm - startMm) ? "whole-length" : "run",
  });
}

/** Plan millimetres per surface millimetre beside the toe: 1 on flat work, 0.707 on a plate seen at 45 degrees. */
export function planShare(draft: SceneDraft, side: "left" | "right"): number {
  const facets = draft.profile.facets;
  const facet = side === "left" ? facets[0]! : facets[facets.length - 1]!;
  return 1 / Math.hypot(1, (facet.z1 - facet.z0) / (facet.y1 - facet.y0));
}

export function toePlace(
  draft: SceneDraft,
  side: "left" | "right",
): "upper-toe" | "lower-toe" | "left-toe" | "right-toe" {
  const leaning = draft.profile.facets.length === 2 || draft.profile.facets[0]!.name === "lower-plate";
  if (leaning) return side === "left" ? "lower-toe" : "upper-toe";
  return side === "left" ? "left-toe" : "right-toe";
}
