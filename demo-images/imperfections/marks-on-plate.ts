import { forEachPoint, raiseMask, sampleHeight } from "../field/height-grid";
import { fractalNoise2, noise2, smoothstep } from "../noise/noise";
import { centreAt, lastBead, ring, type PlanPoint, type SceneDraft } from "./draft";

export interface ArcStrikeOptions {
  readonly xMm: number;
  readonly yMm: number;
  readonly diameterMm: number;
  readonly seed: number;
}

/** A stray touch of the arc: a small melted pit with a splashed rim and a burnt halo on the plate. */
export function paintArcStrike(draft: SceneDraft, options: ArcStrikeOptions): void {
  const { grid } = draft;
  const radius = options.diameterMm / 2;
  const reach = radius * 3;
  const { xMm, yMm, seed } = options;
  forEachPoint(grid, { x0: xMm - reach, x1: xMm + reach, y0: yMm - reach, y1: yMm + reach }, (k, x, y) => {
    const ragged = 1 + 0.28 * noise2(x * 0.9, y * 0.9, seed) + 0.12 * noise2(x * 3, y * 3, seed + 1);
    const r = (Math.hypot(x - xMm, y - yMm) / radius) * ragged;
    if (r > 3) return;
    const pit = r < 0.75 ? 0.28 * (1 - (r / 0.75) ** 2) : 0;
    const rim =
      0.22 *
      Math.exp(-(((r - 0.88) / 0.2) ** 2)) *
      (0.7 + 0.6 * fractalNoise2(x * 1.5, y * 1.5, seed + 2, 2));
    grid.h[k]! += rim - pit;
    raiseMask(grid.mask.bead, k, smoothstep(1.15, 0.95, r));
    raiseMask(grid.mask.heat, k, smoothstep(2.9, 1, r) * 0.97);
    raiseMask(grid.mask.soot, k, 0.45 * smoothstep(2.4, 1.2, r) * smoothstep(0.8, 1.2, r));
  });
  draft.records.push({
    kind: "arc-strike",
    outline: ring(xMm, yMm, () => radius),
    closed: true,
    sizes: { diameterMm: options.diameterMm },
    place: "beside",
    stretch: null,
  });
}

export interface WireStubOptions {
  readonly xMm: number;
  readonly lengthMm: number;
  readonly diameterMm: number;
  readonly headingDeg: number;
  readonly seed: number;
}

/** A length of unmelted wire frozen into the bead at one end and standing off the plate at the other. */
export function paintWireStub(draft: SceneDraft, options: WireStubOptions): void {
  const { grid } = draft;
  const y0 = centreAt(lastBead(draft), options.xMm);
  const heading = (options.headingDeg * Math.PI) / 180;
  const [c, s] = [Math.cos(heading), Math.sin(heading)];
  const radius = options.diameterMm / 2;
  const base = sampleHeight(grid, options.xMm, y0);
  const reach = options.lengthMm + 2;
  forEachPoint(
    grid,
    { x0: options.xMm - reach, x1: options.xMm + reach, y0: y0 - reach, y1: y0 + reach },
    (k, x, y) => {
      const along = (x - options.xMm) * c + (y - y0) * s;
      const bow = 0.05 * (along * along) * 0.2;
      const across = (y - y0) * c - (x - options.xMm) * s - bow;
      if (along < -0.8 || along > options.lengthMm || Math.abs(across) >= radius) return;
      const top = base + 0.06 * along + Math.sqrt(radius * radius - across * across);
      if (top > grid.h[k]!) {
        grid.h[k] = top;
        grid.mask.spatter[k] = 200;
        grid.mask.soot[k] = 0;
      }
    },
  );
  const outline: PlanPoint[] = [0, 0.25, 0.5, 0.75, 1].map((t) => {
    const along = t * options.lengthMm;
    const bow = 0.01 * along * along;
    return [options.xMm + along * c - bow * s, y0 + along * s + bow * c];
  });
  draft.records.push({
    kind: "wire-stub",
    outline,
    closed: false,
    sizes: { lengthMm: options.lengthMm, diameterMm: options.diameterMm },
    place: "face",
    stretch: null,
  });
}
