import { EigenvalueDecomposition, Matrix } from "ml-matrix";
import { fitEllipse, type Ellipse, type Point } from "@/lib/geometry";
import type { PlaneMap } from "./types";

type PhotoToPlane = PlaneMap["homography"];

/** The camera as far as a disc needs it, in photo pixels. */
export interface View {
  readonly focalPx: number;
  /** Where the lens looks: the middle of an uncropped photo. */
  readonly centre: Point<"photo">;
}

export interface DiscPose {
  /** Half way between the two poses: their common size and stretch at the disc, no perspective of the tilt. Photo px to mm. */
  readonly middle: PhotoToPlane;
  /** The two tilts that show the very same ellipse, exactly, with their perspective. */
  readonly poses: readonly [PhotoToPlane, PhotoToPlane];
  /** The middle with this share of the one tilt's perspective, to either side. */
  readonly leaning: (share: number) => readonly [PhotoToPlane, PhotoToPlane];
}

/**
 * The two planes in which a disc of this diameter shows this rim. The rays to the rim form an elliptic cone, and a cone
 * has circular sections in two directions, equally inclined to its axis. The axis is the line of sight to the disc,
 * not that of the lens: a disc beside the middle of the photo is foreshortened by where it lies as well as by the tilt.
 * Which of the two is the plate, one disc cannot say, and nothing is guessed: the smaller tilt is the likelier one in
 * most photos, and the wrong one in just those in which it matters.
 *
 * Derived from the cone's quadratic form; coordinates in mm, axes as near to the photo's as the plane allows. Null when
 * the picks lie on no ellipse.
 *
 * @param view How the camera looks, given the ellipse.
 */
export function discPose(
  rim: readonly Point<"photo">[],
  diameterMm: number,
  view: (ellipse: Ellipse<"photo">) => View,
): DiscPose | null {
  const ellipse = fitEllipse(rim);
  if (ellipse === null) return null;
  const { focalPx, centre } = view(ellipse);
  const cone = coneAxes(conicMatrix(ellipse, { focalPx, centre }));
  if (cone === null) return null;
  const { axes, sine, cosine, minor } = cone;
  // With the plane one unit off, the rim's chord in the plane of the tilt is a diameter.
  const along = (y: number): number => (cosine * y - sine) / (cosine + sine * y);
  const offMm = diameterMm / (along(minor) - along(-minor));
  const [e1, e2, e3] = axes;
  const u = unit([1 - e3[0] * e3[0], -e3[0] * e3[1], -e3[0] * e3[2]]);
  const v: Vec3 = cross(e3, u);
  // From the cone's own axes back to those that lie like the photo's.
  const turn = new Matrix([
    [dot3(e1, u), dot3(e2, u), 0],
    [dot3(e1, v), dot3(e2, v), 0],
    [0, 0, 1],
  ]);
  const rays = new Matrix(axes.map((axis) => [...axis])).mmul(toRays(focalPx, centre));
  const whole = (inCone: number[][]): PhotoToPlane => homographyOf(turn.mmul(new Matrix(inCone)).mmul(rays));
  const tangent = sine / cosine;
  // One family from pose to pose: at +1 and -1 it is either, and all of it agrees with both at the disc itself.
  const between = (q: number): PhotoToPlane =>
    whole([
      [offMm / cosine, 0, 0],
      [0, offMm * (1 / cosine ** 2 - (q * tangent) ** 2), -offMm * q * tangent],
      [0, q * tangent, 1],
    ]);
  const either = (share: number) => [between(share), between(-share)] as const;
  return { middle: between(0), poses: either(1), leaning: either };
}

type Vec3 = readonly [number, number, number];

interface Cone {
  /** Major axis, minor axis, line of sight. */
  readonly axes: readonly [Vec3, Vec3, Vec3];
  /** Of the angle between the line of sight and either normal. */
  readonly sine: number;
  readonly cosine: number;
  /** Half the opening along the minor axis, at unit depth. */
  readonly minor: number;
}

/** The frame in which the cone is x^2 / major^2 + y^2 / minor^2 = z^2, and the tilt of its circular sections. */
function coneAxes(conic: Matrix): Cone | null {
  const split = new EigenvalueDecomposition(conic, { assumeSymmetric: true });
  const own = split.realEigenvalues.map((value, i) => ({
    value,
    axis: split.eigenvectorMatrix.getColumn(i) as unknown as Vec3,
  }));
  const [sight, wide, narrow] = own.sort((a, b) => a.value - b.value) as [
    (typeof own)[0],
    (typeof own)[0],
    (typeof own)[0],
  ];
  if (!(sight.value < 0) || !(wide.value > 0)) return null;
  const spread = narrow.value - sight.value;
  const e3: Vec3 = sight.axis[2] > 0 ? sight.axis : [-sight.axis[0], -sight.axis[1], -sight.axis[2]];
  const e2 = narrow.axis;
  return {
    // Right-handed, so that nothing is seen from behind.
    axes: [cross(e2, e3), e2, e3],
    sine: Math.sqrt((narrow.value - wide.value) / spread),
    cosine: Math.sqrt((wide.value - sight.value) / spread),
    minor: Math.sqrt(-sight.value / narrow.value),
  };
}

/** p' Q p = 0 on the rim, inside negative, for rays p = (x, y, 1) at unit focal length. */
function conicMatrix({ centre, semiMajor, semiMinor, angle }: Ellipse<"photo">, view: View): Matrix {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const [a, b] = [semiMajor / view.focalPx, semiMinor / view.focalPx];
  const x = (centre.x - view.centre.x) / view.focalPx;
  const y = (centre.y - view.centre.y) / view.focalPx;
  const xx = (c / a) ** 2 + (s / b) ** 2;
  const xy = c * s * (1 / a ** 2 - 1 / b ** 2);
  const yy = (s / a) ** 2 + (c / b) ** 2;
  const xz = -(xx * x + xy * y);
  const yz = -(xy * x + yy * y);
  return new Matrix([
    [xx, xy, xz],
    [xy, yy, yz],
    [xz, yz, -(xz * x + yz * y) - 1],
  ]);
}

const toRays = (focalPx: number, centre: Point<"photo">): Matrix =>
  new Matrix([
    [1 / focalPx, 0, -centre.x / focalPx],
    [0, 1 / focalPx, -centre.y / focalPx],
    [0, 0, 1],
  ]);

const homographyOf = (m: Matrix): PhotoToPlane => {
  const last = m.get(2, 2);
  return m.to1DArray().map((value) => value / last) as unknown as PhotoToPlane;
};

const dot3 = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const unit = (a: Vec3): Vec3 => {
  const size = Math.hypot(...a);
  return [a[0] / size, a[1] / size, a[2] / size];
};
