import type { VisibleBlocks } from "../camera/visible-blocks";
import type { HeightGrid } from "../field/height-grid";
import { surfaceDistance, type Profile } from "../geometry/profile";
import { createSurfaceMaterial, type SurfaceLook } from "../materials/surface-material";
import { createSurfacePoint } from "../materials/surface-point";
import { createSlowField } from "../noise/slow-field";
import { createShadowTest } from "./cast-shadow";
import type { LightRig } from "./lamp";
import { createFallOff } from "./light-fall";
import { sampleOpenness, type OpennessMap } from "./openness";
import { createShade } from "./shade";

export interface LightFieldInput {
  readonly grid: HeightGrid;
  readonly profile: Profile;
  readonly look: SurfaceLook;
  readonly rig: LightRig;
  readonly openness: OpennessMap;
  readonly visible: VisibleBlocks;
  readonly eye: readonly [number, number, number];
}

/**
 * Lights the grid's rows j0 to j1 (half-open) as seen from the eye; writes linear RGB triples into `radiance`, where the
 * camera may look.
 */
export function lightRows(input: LightFieldInput, radiance: Float32Array, j0: number, j1: number): void {
  const { grid, profile, look, rig, openness, visible, eye } = input;
  const { nx, ny, h, stepMm } = grid;
  const { object, spatter } = grid.mask;
  const shade = createShade(rig, profile.up);
  const key = rig.lamps.find((lamp) => lamp.castsShadow);
  const lit = key === undefined ? () => 1 : createShadowTest(grid, key);
  const fallOff = createSlowField(1.5, createFallOff(rig.fall));
  const point = createSurfacePoint();
  const surfaceMaterial = createSurfaceMaterial(look, grid);
  for (let j = j0; j < j1; j++) {
    const y = grid.y0 + j * stepMm;
    const s = surfaceDistance(profile, y);
    const blocks = ((j / visible.block) | 0) * visible.nx;
    for (let i = 0; i < nx; i++) {
      if (visible.seen[blocks + ((i / visible.block) | 0)] === 0) continue;
      const k = j * nx + i;
      const x = grid.x0 + i * stepMm;
      const z = h[k]!;
      // Slopes never reach across the edge of a scale object or a ball: its side is a wall, not a ramp that could catch light.
      const code = object[k]!;
      const ball = spatter[k]! > 0;
      const right = i < nx - 1 && object[k + 1] === code && spatter[k + 1]! > 0 === ball ? 1 : 0;
      const left = i > 0 && object[k - 1] === code && spatter[k - 1]! > 0 === ball ? 1 : 0;
      const gx = right + left === 0 ? 0 : (h[k + right]! - h[k - left]!) / ((right + left) * stepMm);
      const up = j < ny - 1 && object[k + nx] === code && spatter[k + nx]! > 0 === ball ? 1 : 0;
      const down = j > 0 && object[k - nx] === code && spatter[k - nx]! > 0 === ball ? 1 : 0;
      const gy = up + down === 0 ? 0 : (h[k + up * nx]! - h[k - down * nx]!) / ((up + down) * stepMm);
      const n = 1 / Math.sqrt(gx * gx + gy * gy + 1);
      const vx = eye[0] - x;
      const vy = eye[1] - y;
      const vz = eye[2] - z;
      const v = 1 / Math.sqrt(vx * vx + vy * vy + vz * vz);
      const open = sampleOpenness(openness, i, j);
      surfaceMaterial(point, k, x, y, s, open);
      shade(
        point,
        -gx * n,
        -gy * n,
        n,
        vx * v,
        vy * v,
        vz * v,
        lit(i, j),
        fallOff(x, y),
        open,
        radiance,
        3 * k,
      );
    }
  }
}
