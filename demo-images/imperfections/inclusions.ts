import { forEachPoint, raiseMask } from "../field/height-grid";
import { noise2, smoothstep } from "../noise/noise";
import { centreAt, lastBead, outlineArea, ring, type SceneDraft } from "./draft";

export interface InclusionOptions {
  readonly metal: "tungsten" | "copper";
  readonly xMm: number;
  /** From the middle of the face, plan mm. */
  readonly asideMm: number;
  readonly diameterMm: number;
  readonly seed: number;
}

/** Foreign metal frozen into the face: an angular splinter of tungsten, or a smear of copper that melted in. */
export function paintInclusion(draft: SceneDraft, options: InclusionOptions): void {
  const { grid } = draft;
  const { metal, seed, xMm } = options;
  const yMm = centreAt(lastBead(draft), xMm) + options.asideMm;
  const radius = options.diameterMm / 2;
  const radiusAt = (angle: number): number =>
    metal === "tungsten"
      ? radius *
        (0.92 + 0.22 * Math.abs(Math.cos(1.5 * angle + seed)) - 0.12 * Math.cos(2 * angle + 1.3 * seed))
      : radius *
        (1 + 0.3 * noise2(1.3 * Math.cos(angle), 1.3 * Math.sin(angle), seed) + 0.16 * Math.cos(angle));
  const reach = radius * 2.6;
  forEachPoint(grid, { x0: xMm - reach, x1: xMm + reach, y0: yMm - reach, y1: yMm + reach }, (k, x, y) => {
    const [dx, dy] = [x - xMm, y - yMm];
    const r = Math.hypot(dx, dy) / radiusAt(Math.atan2(dy, dx));
    if (r > 2.4) return;
    if (metal === "tungsten") {
      // A facet tilted its own way, standing out of a ring of burnt metal.
      if (r < 1) grid.h[k]! += 0.12 * smoothstep(1, 0.8, r) + 0.09 * (dx / radius) * smoothstep(1, 0.7, r);
      else raiseMask(grid.mask.soot, k, 0.8 * smoothstep(2.4, 1.1, r) * smoothstep(1, 1.15, r));
    } else if (r < 1.2) {
      grid.h[k]! += 0.05 * smoothstep(1.1, 0.4, r) * (1 + 0.6 * noise2(x * 3, y * 3, seed + 1));
    }
    const body =
      metal === "tungsten"
        ? smoothstep(1.06, 0.94, r)
        : smoothstep(1.15, 0.8, r) * (0.85 + 0.3 * noise2(x * 2.2, y * 2.2, seed + 2));
    raiseMask(grid.mask[metal], k, body);
  });
  const outline = ring(xMm, yMm, radiusAt);
  draft.records.push({
    kind: metal === "tungsten" ? "tungsten-inclusion" : "copper-inclusion",
    outline,
    closed: true,
    // Across a circle of the same area.
    sizes: { diameterMm: Math.sqrt((4 / Math.PI) * outlineArea(outline)) },
    place: "face",
    stretch: null,
  });
}
