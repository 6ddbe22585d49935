import { forEachPoint, raiseMask, sampleHeight } from "../field/height-grid";
import { profileHeight } from "../geometry/profile";
import { fractalNoise1, fractalNoise2, smoothstep } from "../noise/noise";
import type { Bead } from "../geometry/bead";
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

/** The roll at one place along the weld; plan millimetres. */
interface Roll {
  readonly x: number;
  readonly toe: number;
  readonly lip: number;
  /** Where on the face the roll begins, and how high the face lies over the plate there. */
  readonly from: number;
  readonly fromLift: number;
  readonly height: number;
  readonly half: number;
  readonly outward: 1 | -1;
  /** 1 along the roll, 0 at its ends. */
  readonly ends: number;
}

function rollAt(draft: SceneDraft, bead: Bead, options: OverlapOptions, x: number): Roll | null {
  const toes = bead.toesAt(x);
  if (toes === null) return null;
  const outward = options.side === "left" ? -1 : 1;
  const plan = planShare(draft, options.side);
  const toe = options.side === "left" ? toes.leftMm : toes.rightMm;
  const ends =
    smoothstep(options.fromMm, options.fromMm + 4, x) * smoothstep(options.toMm, options.toMm - 4, x);
  const swell = Math.max(0.06, ends * (0.85 + 0.5 * fractalNoise1(x * 0.19, options.seed, 3)));
  const reach = options.reachMm * plan * swell;
  const from = toe - outward * Math.max(2.2 * plan, 1.4 * reach);
  return {
    x,
    toe,
    lip: toe + outward * reach,
    from,
    fromLift: sampleHeight(draft.grid, x, from) - profileHeight(draft.profile, from),
    height: (options.heightMm * (0.45 + 0.55 * swell)) / plan,
    half: (toes.rightMm - toes.leftMm) / 2,
    outward,
    ends,
  };
}

/** Lays one column of the roll: rounded metal with a dark crevice where it meets the plate. */
function layColumn(draft: SceneDraft, bead: Bead, roll: Roll, plan: number, seed: number): void {
  const { grid, profile } = draft;
  const { x, lip, from, fromLift, height, outward, ends } = roll;
  const step = grid.stepMm;
  const box = {
    x0: x - step * 0.499,
    x1: x + step * 0.5,
    y0: Math.min(from, lip) - 0.4,
    y1: Math.max(from, lip) + 0.4,
  };
  const top = Math.max(height, fromLift);
  forEachPoint(grid, box, (k, _x, y) => {
    const beyond = (y - lip) * outward;
    if (beyond > 0.16) return;
    if (beyond > 0) {
      grid.h[k]! -= (0.12 * ends * (1 - beyond / 0.16)) / plan;
      raiseMask(grid.mask.crack, k, ends * (0.9 - beyond * 5));
      return;
    }
    const r = Math.min(1, -beyond / Math.abs(lip - from));
    const rise = (1 - (1 - r) ** 2.4) ** 0.5;
    const metal = Math.min((top * r + height * (1 - r)) * rise, top);
    // Where the roll leaves the face it takes the face as it is, or a seam would show.
    const own = rise * smoothstep(1, 0.65, r);
    const ripple = 0.8 * bead.ripples.heightAt(x, outward * (1.15 - 0.5 * r), roll.half) * own;
    const wrinkle = 0.05 * fractalNoise2(x * 1.1, y * 0.8, seed + 9, 3) * own;
    grid.h[k] = Math.max(grid.h[k]!, profileHeight(profile, y) + metal + wrinkle + ripple);
    raiseMask(grid.mask.bead, k, 1);
  });
}

/** Metal rolled over the toe; its sizes are those of the roll as it lies. */
export function paintOverlap(draft: SceneDraft, options: OverlapOptions): void {
  const bead = lastBead(draft);
  const { grid, profile } = draft;
  const plan = planShare(draft, options.side);
  const rolls: Roll[] = [];
  for (let x = options.fromMm; x <= options.toMm; x += grid.stepMm) {
    const roll = rollAt(draft, bead, options, x);
    if (roll === null) continue;
    layColumn(draft, bead, roll, plan, options.seed);
    rolls.push(roll);
  }
  if (rolls.length < 2) return;
  const thin = Math.max(1, Math.round(0.4 / grid.stepMm));
  const kept = rolls.filter((_, i) => i % thin === 0);
  const inner = kept.map((r): PlanPoint => [r.x, r.toe]);
  const outer = kept.map((r): PlanPoint => [r.x, r.lip]);
  // Over the plate at the true toe, square to it: what a gauge would read.
  const lifts = kept.map((r) => plan * (sampleHeight(grid, r.x, r.toe) - profileHeight(profile, r.toe)));
  draft.records.push({
    kind: "overlap",
    outline: [...inner, ...outer.reverse()],
    closed: true,
    sizes: {
      lengthMm: rolls[rolls.length - 1]!.x - rolls[0]!.x,
      reachMm: Math.max(...rolls.map((r) => Math.abs(r.lip - r.toe))) / plan,
      heightMm: Math.max(...lifts),
    },
    place: toePlace(draft, options.side),
    stretch: "run",
  });
}
