import { fractalNoise2, noise2, patchMask, smoothstep } from "../noise/noise";
import { coats } from "./coats";
import { coat, tintPoint, type SurfacePoint } from "./surface-point";

export interface WeldLook {
  readonly seed: number;
  /** 0 wire-brushed and bright, 1 dull grey and oxidised. */
  readonly oxide: number;
  /** Straw and purple on the face, as on stainless. */
  readonly tint: number;
}

/** Sets the point to weld metal at (x, y), `slope` the steepness there: oxide stays in the valleys between ripples. */
export function weldMaterial(
  point: SurfacePoint,
  look: WeldLook,
  x: number,
  y: number,
  valley: number,
): void {
  const { seed, oxide } = look;
  coat(point, coats.weldBright, 1);
  const cloud = fractalNoise2(x * 0.22, y * 0.4, seed + 91, 4);
  coat(point, coats.weldDull, oxide * (0.35 + 0.6 * smoothstep(-0.7, 0.7, cloud + oxide * 0.4)));
  coat(point, coats.weldOxide, (0.25 + 0.55 * oxide) * patchMask(x * 0.4, y * 0.5, seed + 92, 0.3, 0.25));
  coat(point, coats.weldOxide, Math.min(0.75, valley * (0.75 + 0.5 * oxide)));
  const grain = noise2(x * 6, y * 6, seed + 93);
  const fine = noise2(x * 13, y * 13, seed + 96);
  tintPoint(point, 0.72, 0.72, 0.73, 0.5 + 0.5 * fine);
  // The brush and the chipping hammer reach the crests only.
  const crest =
    smoothstep(0.06, -0.08, valley) *
    (0.45 + 0.55 * smoothstep(-0.5, 0.6, noise2(x * 0.9, y * 1.6, seed + 89) + 0.3 - oxide));
  coat(point, coats.crest, 0.65 * crest);
  point.rough = Math.min(0.8, Math.max(0.17, point.rough + 0.08 * grain + 0.04 * fine));
  const warm = 0.5 + 0.5 * noise2(x * 0.15, y * 0.2, seed + 94);
  tintPoint(point, 1.03, 0.98, 0.9, 0.6 * warm);
  if (look.tint > 0) {
    const band = fractalNoise2(x * 0.12, y * 0.25, seed + 95, 3);
    tintPoint(point, 1.0, 0.76, 0.42, look.tint * smoothstep(-0.2, 0.3, band));
    tintPoint(point, 0.6, 0.5, 0.85, look.tint * 0.8 * smoothstep(0.15, 0.5, -band));
  }
}
