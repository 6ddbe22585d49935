import { noise2 } from "../noise/noise";
import { profileHeight, surfaceDistance, type Profile } from "../geometry/profile";
import type { HeightGrid } from "./height-grid";

/** Surface relief of a plate finish, mm, at the plate's own coordinates (x along the weld, s across it). */
export type FinishRelief = (x: number, s: number) => number;

/** Fills the grid with the bare joint: its profile and the fine relief of its finish. */
export function paintPlate(grid: HeightGrid, profile: Profile, relief: FinishRelief): void {
  for (let j = 0; j < grid.ny; j++) {
    const y = grid.y0 + j * grid.stepMm;
    const base = profileHeight(profile, y);
    const s = surfaceDistance(profile, y);
    for (let i = 0; i < grid.nx; i++) {
      const x = grid.x0 + i * grid.stepMm;
      grid.h[j * grid.nx + i] = base + relief(x, s) + 0.03 * noise2(x * 0.03, s * 0.03, 5);
    }
  }
}
