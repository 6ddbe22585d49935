import { forEachPoint, type HeightGrid } from "../field/height-grid";
import type { PlaneFrame } from "../camera/camera";
import type { Facet } from "../geometry/profile";
import { add, radians, scale, type Vec3 } from "../geometry/vector";
import type { ScaleObject } from "./scale-object";

/** Where an object lies on its plate: middle at (x along the weld, v across the plate), turned by `turnDeg`. */
export interface Placement {
  readonly xMm: number;
  readonly vMm: number;
  readonly turnDeg: number;
}

/** The plate's own frame: u along the weld, v over its surface from the joint's edge of this facet. */
export function facetFrame(facet: Facet): PlaneFrame & { readonly normal: Vec3 } {
  const length = Math.hypot(facet.y1 - facet.y0, facet.z1 - facet.z0);
  const alongV: Vec3 = [0, (facet.y1 - facet.y0) / length, (facet.z1 - facet.z0) / length];
  const nearer =
    Math.abs(facet.y0) < Math.abs(facet.y1)
      ? ([0, facet.y0, facet.z0] as const)
      : ([0, facet.y1, facet.z1] as const);
  const symmetric = Math.abs(facet.y0 + facet.y1) < 1e-9;
  const origin: Vec3 = symmetric ? [0, 0, (facet.z0 + facet.z1) / 2] : nearer;
  return { origin, alongU: [1, 0, 0], alongV, normal: [0, -alongV[2], alongV[1]] };
}

/** The plane of the object's printed top in the same directions as its plate. */
export function objectPlane(facet: Facet, object: ScaleObject): PlaneFrame {
  const frame = facetFrame(facet);
  return { ...frame, origin: add(frame.origin, scale(frame.normal, object.thicknessMm)) };
}

/** Local (a, b) of the object to its plate's (u, v). */
export function placedPoint(placement: Placement, a: number, b: number): readonly [number, number] {
  const t = radians(placement.turnDeg);
  return [
    placement.xMm + a * Math.cos(t) - b * Math.sin(t),
    placement.vMm + a * Math.sin(t) + b * Math.cos(t),
  ];
}

/** Lays the object on the plate: lifts the field to its top and writes its material and ink. */
export function paintObject(grid: HeightGrid, facet: Facet, object: ScaleObject, placement: Placement): void {
  const plane = objectPlane(facet, object);
  const t = radians(placement.turnDeg);
  const reach = Math.hypot(object.lengthMm, object.widthMm) / 2 + 2;
  const y = plane.origin[1] + placement.vMm * plane.alongV[1];
  const box = { x0: placement.xMm - reach, x1: placement.xMm + reach, y0: y - reach, y1: y + reach };
  forEachPoint(grid, box, (k, px, py) => {
    const v = (py - plane.origin[1]) / plane.alongV[1];
    const du = px - placement.xMm;
    const dv = v - placement.vMm;
    const a = du * Math.cos(t) + dv * Math.sin(t);
    const b = dv * Math.cos(t) - du * Math.sin(t);
    const cover = object.cover(a, b, grid.stepMm);
    if (cover < 0.5) return;
    const top = plane.origin[2] + v * plane.alongV[2] + object.relief(a, b);
    grid.h[k] = top;
    grid.mask.object[k] = object.code;
    grid.mask.ink[k] = Math.round(255 * object.ink(a, b, grid.stepMm));
    grid.mask.spatter[k] = 0;
    grid.mask.soot[k] = 0;
    grid.mask.fume[k] = 0;
  });
}
