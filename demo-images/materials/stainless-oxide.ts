import { HEAT_REACH_MM } from "../field/paint-bead";
import { fractalNoise2, noise2 } from "../noise/noise";
import { createSlowField } from "../noise/slow-field";
import type { PlateLook } from "./plate-look";

/** Thickness of the oxide by place on the plate and the heat mask (0 to 255): 0 clean steel, 1 the grey crust at the toe. */
export type StainlessOxide = (x: number, s: number, heat: number) => number;

/** Thinner than this it gives the steel no colour that an eye finds beside the clean plate. */
export const VISIBLE_OXIDE = 0.06;

export function createStainlessOxide(look: PlateLook): StainlessOxide {
  const shift = createSlowField(0.1, (x, s) => fractalNoise2(x * 0.4, s * 0.4, look.seed + 75, 3));
  return (x, s, heat) => {
    const width = look.heatBandMm * (1 + 0.15 * noise2(x * 0.06, s * 0.05, look.seed + 74));
    const distance = (1 - heat / 255) * HEAT_REACH_MM;
    return Math.min(1, 1.02 - (distance / width) * 0.62 + 0.05 * shift(x, s));
  };
}
