import { smoothstep } from "../noise/noise";
import { coat, tintPoint, type SurfacePoint } from "./surface-point";

/**
 * Colours of the thin oxide on heated stainless, from the far edge inwards: straw, gold, purple, blue, grey.
 * The order follows the oxide's thickness (interference colours; order from memory, strengths own estimate).
 */
const bands = [
  { at: 0.1, tint: [1, 0.9, 0.62] },
  { at: 0.26, tint: [0.98, 0.72, 0.3] },
  { at: 0.42, tint: [0.66, 0.36, 0.3] },
  { at: 0.54, tint: [0.36, 0.26, 0.5] },
  { at: 0.66, tint: [0.22, 0.34, 0.66] },
  { at: 0.8, tint: [0.42, 0.52, 0.6] },
  { at: 0.92, tint: [0.4, 0.37, 0.34] },
] as const;

/** `oxide` 0 is clean steel, 1 the grey crust at the toe. */
export function tintStainless(point: SurfacePoint, oxide: number): void {
  if (oxide <= 0.01) return;
  let k = 0;
  while (k + 1 < bands.length && bands[k + 1]!.at < oxide) k++;
  const low = bands[k]!;
  const high = bands[Math.min(bands.length - 1, k + 1)]!;
  const t = high === low ? 0 : Math.min(1, Math.max(0, (oxide - low.at) / (high.at - low.at)));
  const mix = (i: 0 | 1 | 2): number => low.tint[i] + (high.tint[i] - low.tint[i]) * t;
  tintPoint(point, mix(0), mix(1), mix(2), smoothstep(0, 0.12, oxide));
  if (oxide > 0.85)
    coat(point, { diffuse: [0.1, 0.095, 0.09], mirror: [0.12, 0.115, 0.11], rough: 0.6 }, (oxide - 0.85) * 4);
}
