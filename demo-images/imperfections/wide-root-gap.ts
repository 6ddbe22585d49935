import { forEachPoint, raiseMask } from "../field/height-grid";
import { fractalNoise1, smoothstep } from "../noise/noise";
import { lastBead, type PlanPoint, type SceneDraft } from "./draft";

export interface WideRootGapOptions {
  /** From the base plate to the upright's lower edge where they stand furthest apart, mm. */
  readonly gapMm: number;
  readonly seed: number;
}

/** Plan millimetres per millimetre of an upright seen at 45 degrees. */
const PLAN = Math.SQRT1_2;
/** The burr that cutting left along the upright's lower edge, on the upright's own surface, mm. */
const BURR = { halfMm: 0.3, heightMm: 0.16 } as const;
/** How far in front of the gap the base plate lies in its shade, plan mm. */
const SHADE_MM = 0.5;
/** A stretch shorter than this between a bead and the end of the plates is not seen, mm. */
const LEAST_MM = 3;

/**
 * An upright that does not stand on its base plate, seen wherever no bead lies over the joint. The base plate runs on
 * under the upright and into the dark; each bare stretch is an imperfection of its own. For inner corners only.
 */
export function paintWideRootGap(draft: SceneDraft, options: WideRootGapOptions): void {
  const { startMm, endMm } = lastBead(draft).shape;
  const { x0, nx, stepMm } = draft.grid;
  const gapAt = createGap(options);
  openJoint(draft, gapAt, options.seed);
  record(draft, gapAt, x0, startMm);
  record(draft, gapAt, endMm, x0 + (nx - 1) * stepMm);
}

/** Gap at x, mm: an edge cut by hand and tacked out of true, never more than the options say. */
function createGap({ gapMm, seed }: WideRootGapOptions): (x: number) => number {
  return (x) => {
    const slow = 0.08 * (1 - fractalNoise1(x * 0.035, seed, 2));
    const ragged = 0.03 * (1 - fractalNoise1(x * 0.9, seed + 1, 3));
    return gapMm * Math.min(1, 1 - slow - ragged);
  };
}

function openJoint(draft: SceneDraft, gapAt: (x: number) => number, seed: number): void {
  const { grid } = draft;
  const x1 = grid.x0 + (grid.nx - 1) * grid.stepMm;
  const reach = PLAN * (gapAt(0) + 4 * BURR.halfMm);
  forEachPoint(grid, { x0: grid.x0, x1, y0: -SHADE_MM, y1: reach }, (k, x, y) => {
    if (grid.mask.bead[k]! > 0) return;
    const edge = PLAN * gapAt(x);
    // The seam of plates that touch is not there; in its stead lies the base plate, and shade on it.
    grid.mask.crack[k] = 0;
    if (y < edge) {
      if (y > 0) grid.h[k]! -= 2 * y;
      const shade = y < 0 ? 0.3 * smoothstep(-SHADE_MM, 0, y) : 0.3 + 0.67 * smoothstep(0, 0.3 * edge, y);
      return raiseMask(grid.mask.crack, k, shade);
    }
    // What stands at the brink is the gap's dark mouth; over it the burr catches the light from above.
    const up = (y - edge) / (PLAN * BURR.halfMm);
    if (up > 4) return;
    raiseMask(grid.mask.crack, k, 2 - (y - edge) / grid.stepMm);
    const left = 0.55 + 0.45 * fractalNoise1(x * 0.5, seed + 2, 3);
    grid.h[k]! += (BURR.heightMm / PLAN) * left * Math.exp(-((up - 1.2) ** 2));
    raiseMask(grid.mask.bare, k, 0.9 * left * smoothstep(2.6, 1.6, up));
  });
}

/** One bare stretch of the joint, as a line through the middle of the gap. */
function record(draft: SceneDraft, gapAt: (x: number) => number, fromMm: number, toMm: number): void {
  const lengthMm = toMm - fromMm;
  if (lengthMm < LEAST_MM) return;
  const count = Math.ceil(lengthMm);
  const xs = Array.from({ length: count + 1 }, (_, i) => fromMm + (lengthMm * i) / count);
  draft.records.push({
    kind: "wide-root-gap",
    outline: xs.map((x): PlanPoint => [x, 0.5 * PLAN * gapAt(x)]),
    closed: false,
    // As a feeler gauge reads it: the thickest leaf that goes in anywhere along the stretch.
    sizes: { lengthMm, gapMm: Math.max(...xs.map(gapAt)) },
    place: null,
    stretch: null,
  });
}
