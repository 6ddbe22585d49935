import { forEachPoint, raiseMask } from "../field/height-grid";
import { fractalNoise2, noise2, smoothstep } from "../noise/noise";
import { outlineArea, ring, type SceneDraft } from "./draft";

export interface TornSurfaceOptions {
  readonly xMm: number;
  readonly yMm: number;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly depthMm: number;
  readonly seed: number;
}

/** Distance from the middle as a share of the ragged edge's, `dx` and `dy` in mm from the middle. */
type Share = (dx: number, dy: number) => number;

function raggedShare({ lengthMm, widthMm, seed }: TornSurfaceOptions): Share {
  const [a, b] = [lengthMm / 2, widthMm / 2];
  return (dx, dy) => {
    const ragged = 0.2 * noise2(dx * 0.55, dy * 0.55, seed) + 0.13 * noise2(dx * 1.9, dy * 1.9, seed + 1);
    return Math.hypot(dx / a, dy / b) * (1 + ragged);
  };
}

/** Where a tacked-on piece was knocked off: a stump of weld along one side, a torn bright hollow along the other. */
export function paintTornSurface(draft: SceneDraft, options: TornSurfaceOptions): void {
  const { xMm, yMm, depthMm } = options;
  const b = options.widthMm / 2;
  const shareAt = raggedShare(options);
  const reach = 1.6 * Math.max(options.lengthMm / 2, b);
  tear(draft, options, shareAt, reach);
  const outline = ring(
    xMm,
    yMm,
    (angle) => {
      let t = 0.2 * b;
      while (t < reach && shareAt(t * Math.cos(angle), t * Math.sin(angle)) < 1) t += 0.02;
      return t;
    },
    40,
  );
  draft.records.push({
    kind: "torn-surface",
    outline,
    closed: true,
    sizes: { lengthMm: options.lengthMm, depthMm, areaMmSquared: outlineArea(outline) },
    place: "beside",
    stretch: null,
  });
}

function tear({ grid }: SceneDraft, options: TornSurfaceOptions, shareAt: Share, reach: number): void {
  const { xMm, yMm, depthMm, seed } = options;
  const b = options.widthMm / 2;
  forEachPoint(grid, { x0: xMm - reach, x1: xMm + reach, y0: yMm - reach, y1: yMm + reach }, (k, x, y) => {
    const [dx, dy] = [x - xMm, y - yMm];
    const r = shareAt(dx, dy);
    if (r > 1.9) return;
    raiseMask(grid.mask.heat, k, 0.94 * smoothstep(1.9, 1, r));
    if (r > 1.1) return;
    // It broke off over the far side: the near half is pulled up, the far half pulled out.
    const pulledOut = smoothstep(-0.35, 0.15, dy / b + 0.3 * noise2(dx * 0.8, dy * 0.8, seed + 2));
    const grain = fractalNoise2(dx * 0.7, dy * 1.1, seed + 3, 2);
    const inside = smoothstep(1.04, 0.9, r);
    const stump = 1.1 * smoothstep(1.02, 0.55, r) * (0.9 + 0.4 * grain);
    const hollow = -depthMm * smoothstep(1.02, 0.75, r) * (0.85 + 0.5 * grain);
    grid.h[k]! +=
      inside *
      (stump * (1 - pulledOut) +
        hollow * pulledOut +
        0.22 * grain +
        0.012 * noise2(dx * 5, dy * 5, seed + 6));
    const fibre = 0.5 + 0.5 * noise2(dx * 1.2, dy * 3.4, seed + 4);
    // The stump is old weld under its skin, the hollow fresh grey metal.
    raiseMask(grid.mask.bead, k, 0.7 * inside * (1 - pulledOut));
    raiseMask(grid.mask.bare, k, inside * pulledOut * (0.3 + 0.4 * fibre));
    raiseMask(grid.mask.rust, k, inside * 0.25 * smoothstep(0.2, 0.7, noise2(dx * 1.1, dy * 1.1, seed + 5)));
  });
}
