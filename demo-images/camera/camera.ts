import { add, cross, dot, normalise, radians, scale, subtract, type Vec3 } from "../geometry/vector";

/**
 * A pinhole camera with radial distortion. Pixels are continuous, origin at the top-left corner of the top-left
 * pixel, so that the middle of that pixel is (0.5, 0.5).
 */
export interface Camera {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly focalPx: number;
  readonly centrePx: readonly [number, number];
  /** Plan frame, mm. */
  readonly position: Vec3;
  readonly right: Vec3;
  readonly down: Vec3;
  readonly forward: Vec3;
  /** Radial terms of Brown's model on focal-normalised coordinates: r' = r (1 + k1 r² + k2 r⁴). */
  readonly k1: number;
  readonly k2: number;
}

export interface CameraPose {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly target: Vec3;
  readonly distanceMm: number;
  /** Width of what is seen at the target, mm. */
  readonly fieldWidthMm: number;
  /** Lean of the optical axis off the plan frame's z. */
  readonly tiltDeg: number;
  /** Where the camera leans to: 0 towards the bottom of the picture (-y), 90 to the right (+x). */
  readonly azimuthDeg: number;
  /** Turn about the optical axis, positive turns the picture's content clockwise. */
  readonly rollDeg: number;
  readonly k1: number;
  readonly k2: number;
}

export function createCamera(pose: CameraPose): Camera {
  const tilt = radians(pose.tiltDeg);
  const azimuth = radians(pose.azimuthDeg);
  const away: Vec3 = [
    Math.sin(tilt) * Math.sin(azimuth),
    -Math.sin(tilt) * Math.cos(azimuth),
    Math.cos(tilt),
  ];
  const position = add(pose.target, scale(away, pose.distanceMm));
  const forward = scale(away, -1);
  const flatRight = normalise(cross(forward, [0, 1, 0]));
  const flatDown = cross(forward, flatRight);
  const roll = radians(pose.rollDeg);
  const right = add(scale(flatRight, Math.cos(roll)), scale(flatDown, -Math.sin(roll)));
  const down = add(scale(flatRight, Math.sin(roll)), scale(flatDown, Math.cos(roll)));
  return {
    widthPx: pose.widthPx,
    heightPx: pose.heightPx,
    focalPx: (pose.widthPx * pose.distanceMm) / pose.fieldWidthMm,
    centrePx: [pose.widthPx / 2, pose.heightPx / 2],
    position,
    right,
    down,
    forward,
    k1: pose.k1,
    k2: pose.k2,
  };
}

export type Pixel = readonly [number, number];

/** Where a point of the scene falls in the picture. */
export function projectPoint(camera: Camera, point: Vec3): Pixel {
  const d = subtract(point, camera.position);
  const depth = dot(d, camera.forward);
  const x = dot(d, camera.right) / depth;
  const y = dot(d, camera.down) / depth;
  const r2 = x * x + y * y;
  const bend = 1 + r2 * (camera.k1 + r2 * camera.k2);
  return [camera.centrePx[0] + camera.focalPx * x * bend, camera.centrePx[1] + camera.focalPx * y * bend];
}

/** Focal-normalised coordinates without distortion, by fixed-point iteration (converges for phone lenses). */
export function undistort(camera: Camera, px: number, py: number): readonly [number, number] {
  const xd = (px - camera.centrePx[0]) / camera.focalPx;
  const yd = (py - camera.centrePx[1]) / camera.focalPx;
  let x = xd;
  let y = yd;
  if (camera.k1 !== 0 || camera.k2 !== 0) {
    for (let i = 0; i < 6; i++) {
      const r2 = x * x + y * y;
      const bend = 1 + r2 * (camera.k1 + r2 * camera.k2);
      x = xd / bend;
      y = yd / bend;
    }
  }
  return [x, y];
}

/** Row-major 3x3. */
export type Matrix3 = readonly [number, number, number, number, number, number, number, number, number];

/** A flat surface in the scene: `origin` + u `alongU` + v `alongV`, mm, axes of unit length. */
export interface PlaneFrame {
  readonly origin: Vec3;
  readonly alongU: Vec3;
  readonly alongV: Vec3;
}

export const pointOnPlane = (plane: PlaneFrame, u: number, v: number): Vec3 =>
  add(plane.origin, add(scale(plane.alongU, u), scale(plane.alongV, v)));

/** Homography from plane coordinates (u, v, 1) in mm to pixels of the picture as it were without distortion. */
export function planeToImage(camera: Camera, plane: PlaneFrame): Matrix3 {
  const column = (v: Vec3): Vec3 => {
    const depth = dot(v, camera.forward);
    return [
      camera.focalPx * dot(v, camera.right) + camera.centrePx[0] * depth,
      camera.focalPx * dot(v, camera.down) + camera.centrePx[1] * depth,
      depth,
    ];
  };
  const a = column(plane.alongU);
  const b = column(plane.alongV);
  const c = column(subtract(plane.origin, camera.position));
  const k = 1 / c[2];
  return [a[0] * k, b[0] * k, c[0] * k, a[1] * k, b[1] * k, c[1] * k, a[2] * k, b[2] * k, 1];
}
