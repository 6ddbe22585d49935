import type { Point } from "@/lib/geometry";

/** Deterministic chance for the study: mulberry32. */
export function chance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export function normal(random: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

export interface Camera {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly focalPx: number;
  readonly distanceMm: number;
  /** Tilt about the x and the y axis of the plate, degrees; roll about the view axis. */
  readonly tiltXDeg: number;
  readonly tiltYDeg: number;
  readonly rollDeg: number;
  /** Radial distortion at the corner, as a share of the radius; positive is what straightening takes out. */
  readonly cornerShare: number;
}

/**
 * A pinhole camera looking at the plate's origin: written apart from lib/measure, so that the two can disagree.
 * Plate coordinates in mm, z towards the camera.
 */
export function photograph(camera: Camera, x: number, y: number, z = 0): Point {
  const rad = Math.PI / 180;
  const [cx, sx] = [Math.cos(camera.tiltXDeg * rad), Math.sin(camera.tiltXDeg * rad)];
  const [cy, sy] = [Math.cos(camera.tiltYDeg * rad), Math.sin(camera.tiltYDeg * rad)];
  const [cr, sr] = [Math.cos(camera.rollDeg * rad), Math.sin(camera.rollDeg * rad)];
  // About x, then y, then the view axis.
  const y1 = cx * y - sx * z;
  const z1 = sx * y + cx * z;
  const x2 = cy * x + sy * z1;
  const z2 = -sy * x + cy * z1;
  const [x3, y3] = [cr * x2 - sr * y1, sr * x2 + cr * y1];
  const depth = camera.distanceMm - z2;
  const u = (camera.focalPx * x3) / depth;
  const v = (camera.focalPx * y3) / depth;
  const half = Math.hypot(camera.widthPx, camera.heightPx) / 2;
  // Invert r_straight = r (1 + k r^2 / R^2) by fixed-point steps: k is small.
  const straight = Math.hypot(u, v);
  let bent = straight;
  for (let i = 0; i < 30; i++) bent = straight / (1 + (camera.cornerShare * bent * bent) / half ** 2);
  const share = straight === 0 ? 1 : bent / straight;
  return { x: camera.widthPx / 2 + u * share, y: camera.heightPx / 2 + v * share };
}
