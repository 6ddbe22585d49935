import { noise2, noise1 } from "../noise/noise";
import type { FinishRelief } from "../field/paint-plate";

export const finishes = ["mill-scale", "ground", "brushed", "stainless"] as const;
export type Finish = (typeof finishes)[number];

/** Scratches all along x: long in one direction, a grain of about 0.15 mm across. */
function grain(x: number, s: number, seed: number, length: number): number {
  return noise2(x / length, s * 7, seed) + 0.7 * noise2((x / length) * 2.3 + 9, s * 16, seed + 1);
}

/** A disc grinder leaves arcs that cross; each pass has its own centre far off. */
function grindArc(x: number, s: number, seed: number, cx: number, cs: number): number {
  const r = Math.hypot(x - cx, s - cs);
  const a = Math.atan2(s - cs, x - cx);
  return noise2(a * 9, r * 6, seed) + 0.6 * noise2(a * 16, r * 15, seed + 1);
}

/** Fine relief of a finish, mm (own estimates of roughness, near Ra 1 to 6 micrometres). */
export function finishRelief(finish: Finish, seed: number): FinishRelief {
  switch (finish) {
    case "mill-scale":
      return (x, s) =>
        0.006 * noise2(x * 1.1, s * 1.1, seed) +
        0.0042 * noise2(x * 3.4, s * 3.9, seed + 1) +
        0.0025 * noise2(x * 8, s * 8, seed + 6) +
        0.0015 * noise1(s * 3, seed + 2);
    case "ground":
      return (x, s) => {
        const patch = noise2(x * 0.035, s * 0.05, seed + 8) > 0 ? 0 : 1;
        return (
          0.0042 * grindArc(x, s, seed + patch * 40, patch ? 60 : -35, patch ? -95 : 120) +
          0.0025 * noise2(x * 3, s * 3, seed + 3)
        );
      };
    case "brushed":
      return (x, s) =>
        0.0035 * grain(x + 3 * noise2(x * 0.02, s * 0.02, seed + 5), s, seed, 9) +
        0.002 * noise2(x * 2, s * 2, seed + 4);
    case "stainless":
      return (x, s) => 0.0019 * grain(x, s, seed, 22) + 0.0008 * noise2(x * 5, s * 5, seed + 4);
  }
}
