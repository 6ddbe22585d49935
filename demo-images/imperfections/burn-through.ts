import { forEachPoint, raiseMask } from "../field/height-grid";
import { createRandom, type Random } from "../noise/random";
import { fractalNoise2, smoothstep } from "../noise/noise";
import { centreAt, lastBead, outlineArea, ring, type SceneDraft } from "./draft";

export interface BurnThroughOptions {
  readonly xMm: number;
  readonly lengthMm: number;
  readonly widthMm: number;
  /** Depth of what can be seen down the hole, mm. */
  readonly fallMm: number;
  readonly seed: number;
}

/** A keyhole's edge: an oval with an uneven round. */
function createRim({ lengthMm, widthMm }: BurnThroughOptions, random: Random): (angle: number) => number {
  const phases = Array.from({ length: 4 }, () => random.between(0, 6.28));
  return (a) => {
    const oval = 1 / Math.hypot(Math.cos(a) / (lengthMm / 2), Math.sin(a) / (widthMm / 2));
    return (
      oval *
      (1 +
        0.09 * Math.sin(2 * a + phases[0]!) +
        0.07 * Math.sin(3 * a + phases[1]!) +
        0.045 * Math.sin(7 * a + phases[2]!))
    );
  };
}

/** A hole where the pool fell through: a keyhole with a rolled, shiny rim and the joint sagging into it. */
export function paintBurnThrough(draft: SceneDraft, options: BurnThroughOptions): void {
  const random = createRandom(options.seed);
  const y0 = centreAt(lastBead(draft), options.xMm) + random.normal(0, 0.4);
  const radiusAt = createRim(options, random);
  sinkJoint(draft, options, y0, radiusAt);
  const outline = ring(options.xMm, y0, radiusAt, 40);
  draft.records.push({
    kind: "burn-through",
    outline,
    closed: true,
    sizes: {
      lengthMm: radiusAt(0) + radiusAt(Math.PI),
      widthMm: radiusAt(Math.PI / 2) + radiusAt(-Math.PI / 2),
      areaMmSquared: outlineArea(outline),
    },
    place: "face",
    stretch: "run",
  });
}

/** The joint sags, its rim rolls up, and the middle drops away. */
function sinkJoint(
  draft: SceneDraft,
  options: BurnThroughOptions,
  y0: number,
  radiusAt: (angle: number) => number,
): void {
  const { grid } = draft;
  const reach = options.lengthMm / 2 + 9.5;
  forEachPoint(
    grid,
    { x0: options.xMm - reach, x1: options.xMm + reach, y0: y0 - reach, y1: y0 + reach },
    (k, x, y) => {
      const dx = x - options.xMm;
      const dy = y - y0;
      const distance = Math.hypot(dx, dy) - radiusAt(Math.atan2(dy, dx));
      if (distance > 9) return;
      const sag = -0.75 * Math.exp(-((Math.max(0, distance) / 3.2) ** 2));
      const roll =
        0.55 *
        Math.exp(-(((distance - 0.55) / 0.5) ** 2)) *
        (0.85 + 0.4 * fractalNoise2(x * 0.6, y * 0.6, options.seed, 2));
      grid.h[k]! += sag + roll;
      if (distance < 0.9) raiseMask(grid.mask.bead, k, 1);
      if (distance < 0) {
        const depth = Math.min(1, -distance / 0.35);
        grid.h[k]! -= options.fallMm * depth * depth;
        raiseMask(grid.mask.hole, k, smoothstep(0, 0.3, -distance));
      }
      raiseMask(grid.mask.soot, k, 0.55 * smoothstep(5, 0.5, distance));
    },
  );
}
