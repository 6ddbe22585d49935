import { noise2, smoothstep } from "../noise/noise";
import { profileHeight, surfaceDistance, type Profile } from "../geometry/profile";
import { raiseMask, type HeightGrid } from "./height-grid";

/** Surface relief of a plate finish, mm, at the plate's own coordinates (x along the weld, s across it). */
export type FinishRelief = (x: number, s: number) => number;

const SEAM_MM = 0.22;

/** Fills the grid with the bare joint: its profile and the fine relief of its finish. */
export function paintPlate(grid: HeightGrid, profile: Profile, relief: FinishRelief): void {
  for (let j = 0; j < grid.ny; j++) {
    const y = grid.y0 + j * grid.stepMm;
    const base = profileHeight(profile, y);
    const s = surfaceDistance(profile, y);
    // Two plates that only stand against each other leave a dark seam.
    const seam =
      profile.facets[0]!.name === "lower-plate" ? smoothstep(SEAM_MM, 0.5 * SEAM_MM, Math.abs(s)) : 0;
    for (let i = 0; i < grid.nx; i++) {
      const x = grid.x0 + i * grid.stepMm;
      const k = j * grid.nx + i;
      grid.h[k] = base + relief(x, s) + 0.03 * noise2(x * 0.03, s * 0.03, 5);
      if (seam > 0) raiseMask(grid.mask.crack, k, 0.9 * seam);
    }
  }
}
