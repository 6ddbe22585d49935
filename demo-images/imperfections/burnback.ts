import { forEachPoint, raiseMask, sampleHeight } from "../field/height-grid";
import { noise2, smoothstep } from "../noise/noise";
import { centreAt, lastBead, ring, type SceneDraft } from "./draft";

export interface BurnbackOptions {
  readonly wireMm: number;
  readonly ballMm: number;
  /** How far the cut-off wire sticks out of the ball, and which way it lies. */
  readonly stubMm: number;
  readonly headingDeg: number;
  readonly seed: number;
}

/**
 * The end of a bead whose wire burnt back: the ball that froze on the wire, left in the crater with the stub that was
 * snipped off the gun, and copper of the tip on both.
 */
export function paintBurnback(draft: SceneDraft, options: BurnbackOptions): void {
  const { grid } = draft;
  const bead = lastBead(draft);
  const half = (bead.shape.rightMm - bead.shape.leftMm) / 2;
  const x0 = bead.shape.endMm - 0.9 * half;
  const y0 = centreAt(bead, x0);
  const turn = (options.headingDeg * Math.PI) / 180;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const ball = options.ballMm / 2;
  const wire = options.wireMm / 2;
  const ground = sampleHeight({ ...grid, h: draft.smooth }, x0, y0);
  const reach = options.stubMm + options.ballMm;
  forEachPoint(grid, { x0: x0 - reach, x1: x0 + reach, y0: y0 - reach, y1: y0 + reach }, (k, x, y) => {
    const along = (x - x0) * c + (y - y0) * s;
    const across = (y - y0) * c - (x - x0) * s;
    const r = Math.hypot(x - x0, y - y0) / ball;
    // Burnt round about, as from an arc that stood still.
    raiseMask(grid.mask.soot, k, 0.55 * smoothstep(2.6, 1.1, r + 0.3 * noise2(x, y, options.seed)));
    let top = r < 1 ? ground + 0.45 * ball + ball * Math.sqrt(1 - r * r) : -Infinity;
    if (along > 0 && along < options.stubMm && Math.abs(across) < wire)
      top = Math.max(top, stubTop(along, across, wire, ground + 1.1 * ball, options.stubMm));
    if (top <= grid.h[k]!) return;
    grid.h[k] = top;
    const onWire = along > 0.9 * ball;
    grid.mask.spatter[k] = onWire ? 235 : 205;
    for (const name of ["soot", "fume", "crack", "slag"] as const) grid.mask[name][k] = 0;
    const pickUp = smoothstep(0.1, 0.5, noise2(x * 1.6, y * 1.6, options.seed + 1) + 0.25);
    // Drawn wire is copper-plated, and the ball took copper off the tip in patches.
    grid.mask.copper[k] = Math.round(255 * (onWire ? 0.62 : 0.5 * pickUp));
  });
  draft.records.push({
    kind: "burnback",
    outline: ring(x0, y0, () => ball),
    closed: true,
    sizes: { diameterMm: options.ballMm, lengthMm: options.stubMm },
    place: "face",
    stretch: "crater",
  });
}

/** Top of a round wire that leaves the ball at its middle and rises a little to its snipped end. */
const stubTop = (along: number, across: number, radius: number, from: number, length: number): number =>
  from + 0.25 * along * (1 - 0.3 * (along / length)) + Math.sqrt(radius * radius - across * across);
