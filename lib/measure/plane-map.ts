import {
  applyHomography,
  homographyJacobian,
  horizonSide,
  multiplyHomography,
  type Homography,
  type Point,
} from "@/lib/geometry";
import type { Calibration, PlaneMap, PlanePoint } from "./types";

type Lens = NonNullable<PlaneMap["lens"]>;

/** Takes the radial distortion out: r grows by `cornerShare` at the corner and with the cube of r inside. */
export function straighten(lens: Lens | null, point: Point<"photo">): Point<"photo"> {
  if (lens === null) return point;
  const x = point.x - lens.centre.x;
  const y = point.y - lens.centre.y;
  const grow = 1 + (lens.cornerShare * (x * x + y * y)) / lens.halfDiagonalPx ** 2;
  return { x: lens.centre.x + grow * x, y: lens.centre.y + grow * y };
}

/** Photo pixels to mm in the plane of the scale. */
export function mapPoint(map: PlaneMap, point: Point<"photo">): PlanePoint {
  return applyHomography(map.homography, straighten(map.lens, point));
}

export function mapPoints(map: PlaneMap, points: readonly Point<"photo">[]): readonly PlanePoint[] {
  return points.map((point) => mapPoint(map, point));
}

/** The map followed by another in the plane. */
export function thenInPlane(map: PlaneMap, next: Homography<"plane", "plane">): PlaneMap {
  return { ...map, homography: multiplyHomography(next, map.homography) };
}

/** Largest and smallest mm per photo pixel at a point, over all directions: the singular values of the Jacobian. */
export function localScales(
  map: PlaneMap,
  point: Point<"photo">,
): { readonly largest: number; readonly smallest: number } {
  const [a, b, c, d] = homographyJacobian(map.homography, straighten(map.lens, point));
  const sum = Math.hypot(a + d, b - c);
  const difference = Math.hypot(a - d, b + c);
  return { largest: (sum + difference) / 2, smallest: Math.abs(sum - difference) / 2 };
}

/** Whether all points lie on the same side of the plane's horizon as the scale object. */
export function beforeHorizon(
  { map, middle }: Pick<Calibration, "map" | "middle">,
  points: readonly Point<"photo">[],
): boolean {
  const side = horizonSide(map.homography, straighten(map.lens, middle));
  return points.every((point) => horizonSide(map.homography, straighten(map.lens, point)) === side);
}
