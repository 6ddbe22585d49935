import { noise2, noise1 } from "../noise/noise";
import type { FinishRelief } from "../field/paint-plate";
import { grindPattern, groundShare } from "./ground-strip";
import type { PlateLook } from "./plate-look";

/** Scratches all along x: long in one direction, a grain of about 0.15 mm across. */
function grain(x: number, s: number, seed: number, length: number): number {
  return noise2(x / length, s * 7, seed) + 0.7 * noise2((x / length) * 2.3 + 9, s * 16, seed + 1);
}

/** Fine relief of a finish, mm (own estimates of roughness, near Ra 1 to 6 micrometres). */
export function finishRelief(look: PlateLook): FinishRelief {
  const { finish, seed } = look;
  switch (finish) {
    case "mill-scale": {
      const ground = (x: number, s: number): number => 0.004 * grindPattern(x, s, seed + 110);
      return (x, s) => {
        const share = groundShare(look, x, s);
        if (share >= 1) return ground(x, s);
        const scale =
          0.004 * noise2(x * 0.7, s * 0.8, seed) +
          0.0016 * noise2(x * 2.9, s * 3.6, seed + 1) +
          0.0011 * noise2(x * 9, s * 9, seed + 6) +
          0.001 * noise1(s * 3, seed + 2);
        return share <= 0 ? scale : scale + (ground(x, s) - scale) * share;
      };
    }
    case "ground":
      return (x, s) => 0.0042 * grindPattern(x, s, seed) + 0.0018 * noise2(x * 3, s * 3, seed + 3);
    case "brushed":
      return (x, s) =>
        0.0035 * grain(x + 3 * noise2(x * 0.02, s * 0.02, seed + 5), s, seed, 9) +
        0.002 * noise2(x * 2, s * 2, seed + 4);
    case "stainless":
      return (x, s) => 0.0019 * grain(x, s, seed, 22) + 0.0008 * noise2(x * 5, s * 5, seed + 4);
  }
}
