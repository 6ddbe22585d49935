import { forEachPoint, sampleHeight } from "../field/height-grid";
import { profileHeight } from "../geometry/profile";
import { fractalNoise1, smoothstep } from "../noise/noise";
import { lastBead, type PlanPoint, type SceneDraft } from "./draft";
import { planShare, toePlace } from "./undercut";

export interface SteepToeOptions {
  readonly side: "left" | "right";
  readonly fromMm: number;
  readonly toMm: number;
  /** Height of the step the face makes at the toe, square to the plate, mm. */
  readonly heightMm: number;
  readonly seed: number;
}

/** How far in from the toe the step reaches its height, and how far the angle is read, mm of plate. */
const ROUND_MM = 1;
const READ_MM = 0.5;

/** How nearly upright the step stands on its plate; on a leaning plate a sheer rise in plan would hang over. */
const UPRIGHT_SHARE = 0.95;

/** The greater of two heights, with the crease between them filled over `k` mm. */
function roundMax(a: number, b: number, k: number): number {
  const near = k <= 0 ? 0 : Math.max(0, 1 - Math.abs(a - b) / k);
  return Math.max(a, b) + (k * near * near) / 4;
}

/** Metal that ends on the plate in a steep, rounded step, tied in, instead of running out. */
export function paintSteepToe(draft: SceneDraft, options: SteepToeOptions): void {
  const { grid, profile } = draft;
  const bead = lastBead(draft);
  const outward = options.side === "left" ? -1 : 1;
  const plan = planShare(draft, options.side);
  const upright = UPRIGHT_SHARE / Math.max(0.05, Math.sqrt(1 - plan * plan));
  const path: PlanPoint[] = [];
  for (let x = options.fromMm; x <= options.toMm; x += grid.stepMm) {
    const toes = bead.toesAt(x);
    if (toes === null) continue;
    const toe = options.side === "left" ? toes.leftMm : toes.rightMm;
    const ends =
      smoothstep(options.fromMm, options.fromMm + 4, x) * smoothstep(options.toMm, options.toMm - 4, x);
    const height = (options.heightMm / plan) * ends * (1 + 0.25 * fractalNoise1(x * 0.4, options.seed, 2));
    const half = (toes.rightMm - toes.leftMm) / 2;
    const inner = toe - outward * half;
    const box = {
      x0: x - grid.stepMm * 0.499,
      x1: x + grid.stepMm * 0.5,
      y0: Math.min(toe, inner),
      y1: Math.max(toe, inner),
    };
    forEachPoint(grid, box, (k, _x, y) => {
      const inside = Math.abs(y - toe) / plan;
      const r = Math.min(1, inside / ROUND_MM);
      // Beyond the step it stays level over the plate until the face overtakes it, ripples and all.
      const ripple = bead.ripples.heightAt(x, outward * (1 - 0.12 * inside), half) * r;
      const step = Math.min(height * Math.sqrt(1 - (1 - r) ** 2), upright * inside) + ripple;
      const over = grid.h[k]! - profileHeight(profile, y);
      grid.h[k]! += Math.max(0, roundMax(step, over, 1.3 * r * ends) - over);
    });
    path.push([x, toe]);
  }
  recordToe(draft, options, path, toeAngle(draft, path, outward, plan));
}

function recordToe(
  draft: SceneDraft,
  { side, fromMm, toMm }: SteepToeOptions,
  path: readonly PlanPoint[],
  angleDeg: number,
): void {
  const thin = Math.max(1, Math.round(0.6 / draft.grid.stepMm));
  draft.records.push({
    kind: "steep-toe",
    outline: path.filter((_, i) => i % thin === 0),
    closed: false,
    sizes: { lengthMm: toMm - fromMm, angleDeg },
    place: toePlace(draft, side),
    stretch: "run",
  });
}

/** Angle between the plate outside and the face just inside the toe; 90 is upright, more is flatter. Median along it. */
function toeAngle(draft: SceneDraft, path: readonly PlanPoint[], outward: 1 | -1, plan: number): number {
  const angles = path.map(([x, toe]) => {
    const y = toe - outward * READ_MM * plan;
    const over = sampleHeight(draft.grid, x, y) - profileHeight(draft.profile, y);
    // Straight up in plan is partly along a leaning plate: back towards the toe where the plate falls inwards.
    const fall = (profileHeight(draft.profile, y) - profileHeight(draft.profile, toe)) / READ_MM;
    return 180 - (Math.atan2(over * plan, READ_MM + over * fall) * 180) / Math.PI;
  });
  return angles.toSorted((a, b) => a - b)[angles.length >> 1]!;
}
