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

/** Plan (x, y) on the plate to the object's own (a, b). */
function createToObject(
  plane: PlaneFrame,
  placement: Placement,
): (x: number, y: number) => readonly [number, number] {
  const t = radians(placement.turnDeg);
  const [cos, sin] = [Math.cos(t), Math.sin(t)];
  return (x, y) => {
    const du = x - placement.xMm;
    const dv = (y - plane.origin[1]) / plane.alongV[1] - placement.vMm;
    return [du * cos + dv * sin, dv * cos - du * sin];
  };
}

/** Tells whether the object lies over plan (x, y), or comes so near that seen at a slant it could hide `reachMm` about it. */
export function createCoverTest(
  facet: Facet,
  object: ScaleObject,
  placement: Placement,
): (xMm: number, yMm: number, reachMm: number) => boolean {
  const plane = objectPlane(facet, object);
  const toObject = createToObject(plane, placement);
  return (x, y, reach) => {
    const near = reach + object.thicknessMm;
    const facing = facet.y0 < facet.y1 && y >= facet.y0 && y <= facet.y1;
    const [a, b] = toObject(x, y);
    return facing && Math.abs(a) < object.lengthMm / 2 + near && Math.abs(b) < object.widthMm / 2 + near;
  };
}

/** Read in rendered pixels, an edge drawn without this comes out a fifth of a grid step inside its true place. */
const EDGE_SHIFT = 0.2;

/** Lays the object on the plate: lifts the field to its top and writes its material and ink. */
export function paintObject(grid: HeightGrid, facet: Facet, object: ScaleObject, placement: Placement): void {
  const plane = objectPlane(facet, object);
  const toObject = createToObject(plane, placement);
  const reach = Math.hypot(object.lengthMm, object.widthMm) / 2 + 2;
  const middle = plane.origin[1] + placement.vMm * plane.alongV[1];
  const box = {
    x0: placement.xMm - reach,
    x1: placement.xMm + reach,
    y0: middle - reach,
    y1: middle + reach,
  };
  forEachPoint(grid, box, (k, x, y) => {
    const [a, b] = toObject(x, y);
    // The edge runs between points: those up to a step outside it are lifted too and take its colour by their share, so
    // that the picture turns from object to its dark side where the edge is, whichever way that faces.
    const wide = object.cover(a, b, 2 * grid.stepMm);
    if (wide <= 0) return;
    const cover = Math.min(1, Math.max(0, 2 * wide - 0.5 + EDGE_SHIFT));
    const v = (y - plane.origin[1]) / plane.alongV[1];
    grid.h[k] = plane.origin[2] + v * plane.alongV[2] + object.relief(a, b);
    grid.mask.object[k] = object.code;
    grid.mask.cover[k] = Math.round(255 * cover);
    grid.mask.ink[k] = Math.round(255 * object.ink(a, b, grid.stepMm));
    grid.mask.spatter[k] = 0;
    grid.mask.soot[k] = 0;
    grid.mask.fume[k] = 0;
  });
}
