import { noise2, smoothstep } from "../noise/noise";
import type { HeightGrid } from "../field/height-grid";
import { coats } from "./coats";
import { objectMaterial } from "./object-material";
import { plateMaterial, type PlateLook } from "./plate-material";
import { coat, tintPoint, type SurfacePoint } from "./surface-point";
import { weldMaterial, type WeldLook } from "./weld-material";

export interface SurfaceLook {
  readonly plate: PlateLook;
  readonly weld: WeldLook;
}

const scratchPoint = (p: SurfacePoint): SurfacePoint => ({ ...p });

/** Sets `point` to what lies at grid point k: plate or weld first, then everything stuck to it, dirt last. */
export function surfaceMaterial(
  point: SurfacePoint,
  look: SurfaceLook,
  grid: HeightGrid,
  k: number,
  x: number,
  y: number,
  s: number,
  openness: number,
): void {
  const { mask } = grid;
  const object = mask.object[k]!;
  if (object > 0) return objectMaterial(point, object, mask.ink[k]! / 255, x, y);
  const bead = mask.bead[k]! / 255;
  const valley = (0.96 - openness) * 2.2;
  if (bead < 1) plateMaterial(point, look.plate, x, s, mask.heat[k]!);
  if (bead > 0) {
    const plate = bead < 1 ? scratchPoint(point) : null;
    weldMaterial(point, look.weld, x, y, valley);
    if (plate !== null) {
      coat(
        point,
        {
          diffuse: [plate.dr, plate.dg, plate.db],
          mirror: [plate.fr, plate.fg, plate.fb],
          rough: plate.rough,
        },
        1 - bead,
      );
    }
  }
  coat(point, coats.weldBright, mask.bare[k]! / 255);
  if (mask.spatter[k]! > 0) {
    // The mask's level is the ball's own shade: some come down bright, most with a dark skin.
    coat(point, coats.weldOxide, 1);
    coat(point, coats.spatter, mask.spatter[k]! / 255);
  }
  coat(point, coats.poreFloor, mask.hole[k]! / 255);
  coat(
    point,
    noise2(x * 0.8, y * 0.8, look.weld.seed + 97) > 0.1 ? coats.slagMatt : coats.slag,
    mask.slag[k]! / 255,
  );
  coat(point, coats.silicate, mask.silicate[k]! / 255);
  if (mask.rust[k]! > 0) coat(point, coats.rust, mask.rust[k]! / 255);
  coat(point, coats.fume, (mask.fume[k]! / 255) * 0.75);
  coat(point, coats.soot, (mask.soot[k]! / 255) * 0.92);
  coat(point, coats.crack, mask.crack[k]! / 255);
  dust(point, x, y, look.plate.seed);
}

/** Grinding dust and finger marks lie on everything. */
function dust(point: SurfacePoint, x: number, y: number, seed: number): void {
  const cloud = noise2(x * 0.05, y * 0.05, seed + 98);
  const speck = noise2(x * 2.7, y * 2.7, seed + 99);
  if (speck > 0.78 - 0.1 * cloud) coat(point, coats.fume, 0.35 * smoothstep(0.72, 0.95, speck));
  tintPoint(point, 0.9, 0.89, 0.88, 0.4 * (0.5 + 0.5 * cloud));
}
