import { noise2, smoothstep } from "../noise/noise";
import type { HeightGrid } from "../field/height-grid";
import { coats } from "./coats";
import { objectMaterial } from "./object-material";
import type { PlateLook } from "./plate-look";
import { createPlateMaterial } from "./plate-material";
import { coat, tintPoint, type Coat, type SurfacePoint } from "./surface-point";
import { weldMaterial, type WeldLook } from "./weld-material";

export interface SurfaceLook {
  readonly plate: PlateLook;
  readonly weld: WeldLook;
}

/** Sets a point to what lies at grid point k, plan (x, y), `s` across the plate's own surface. */
export type SurfaceMaterial = (
  point: SurfacePoint,
  k: number,
  x: number,
  y: number,
  s: number,
  openness: number,
) => void;

/** Plate or weld first, then everything stuck to it, dirt last. */
export function createSurfaceMaterial(look: SurfaceLook, grid: HeightGrid): SurfaceMaterial {
  const { mask } = grid;
  const plate = createPlateMaterial(look.plate);
  const stuck = createStuck(mask, look.weld.seed);
  const edgeWear = createEdgeWear(grid, look.plate.seed);
  return (point, k, x, y, s, openness) => {
    const object = mask.object[k]!;
    if (object > 0) {
      objectMaterial(point, object, mask.ink[k]! / 255, x, y);
      // Outside its edge stands its side, in its own shade.
      return coat(point, coats.objectSide, 1 - mask.cover[k]! / 255);
    }
    const bead = mask.bead[k]! / 255;
    if (bead < 1) {
      plate(point, x, s, mask.heat[k]!);
      edgeWear(point, x, y);
    }
    if (bead > 0) {
      const under = bead < 1 ? coatOf(point) : null;
      weldMaterial(point, look.weld, x, y, (0.97 - openness) * 3.2);
      if (under !== null) coat(point, under, 1 - bead);
    }
    stuck(point, k, x, y);
    dust(point, x, y, look.plate.seed);
  };
}

/** Corners and edges rub bright first. */
function createEdgeWear(
  { x0, y0, nx, ny, stepMm }: HeightGrid,
  seed: number,
): (point: SurfacePoint, x: number, y: number) => void {
  const x1 = x0 + (nx - 1) * stepMm;
  const y1 = y0 + (ny - 1) * stepMm;
  return (point, x, y) => {
    const inside = Math.min(x - x0, x1 - x, y - y0, y1 - y);
    if (inside > 1.6) return;
    const rub =
      0.55 + 0.6 * noise2(x * 0.11, y * 0.11, seed + 101) + 0.35 * noise2(x * 1.1, y * 1.1, seed + 102);
    coat(point, coats.steel, 0.28 * smoothstep(0, 0.7, rub - 0.9 * inside));
  };
}

const coatOf = (p: SurfacePoint): Coat => ({
  diffuse: [p.dr, p.dg, p.db],
  mirror: [p.fr, p.fg, p.fb],
  rough: p.rough,
});

/** What the two high bits of the tint mask stand for. */
const bandCoats = [coats.straw, coats.bronze, coats.blue, coats.heatDark] as const;

/** What was left, splashed, opened or settled on the metal, in the order it lies. */
function createStuck(
  mask: HeightGrid["mask"],
  seed: number,
): (point: SurfacePoint, k: number, x: number, y: number) => void {
  return (point, k, x, y) => {
    const tint = mask.tint[k]!;
    if (tint > 0) coat(point, bandCoats[tint >> 6]!, (tint & 63) / 63);
    coat(point, coats.weldBright, mask.bare[k]! / 255);
    if (mask.spatter[k]! > 0) {
      // The mask's level is the ball's own shade: some come down bright, most with a dark skin.
      coat(point, coats.spatterSkin, 1);
      const scab = 0.75 + 0.5 * noise2(x * 2.6, y * 2.6, seed + 90);
      coat(point, coats.spatter, (mask.spatter[k]! / 255) * scab);
      point.rough += 0.07 * noise2(x * 8, y * 8, seed + 88);
    }
    coat(point, coats.copper, mask.copper[k]! / 255);
    coat(point, coats.poreFloor, mask.hole[k]! / 255);
    if (mask.slag[k]! > 0) {
      const matt = noise2(x * 0.8, y * 0.8, seed + 97) > 0.1;
      coat(point, matt ? coats.slagMatt : coats.slag, mask.slag[k]! / 255);
    }
    coat(point, coats.silicate, mask.silicate[k]! / 255);
    coat(point, coats.rust, mask.rust[k]! / 255);
    coat(point, coats.fume, (mask.fume[k]! / 255) * 0.75);
    coat(point, coats.soot, (mask.soot[k]! / 255) * 0.92);
    coat(point, coats.tungsten, mask.tungsten[k]! / 255);
    coat(point, coats.crack, mask.crack[k]! / 255);
    coat(point, coats.chalk, mask.chalk[k]! / 255);
  };
}

/** Grinding dust and finger marks lie on everything. */
function dust(point: SurfacePoint, x: number, y: number, seed: number): void {
  const cloud = noise2(x * 0.05, y * 0.05, seed + 98);
  const speck = noise2(x * 2.7, y * 2.7, seed + 99);
  if (speck > 0.78 - 0.1 * cloud) coat(point, coats.fume, 0.35 * smoothstep(0.72, 0.95, speck));
  tintPoint(point, 0.9, 0.89, 0.88, 0.4 * (0.5 + 0.5 * cloud));
}
