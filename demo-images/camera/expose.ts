import type { CeilingMap } from "../field/ceiling-map";
import { createRayCaster, createRayHit, type RayHit } from "../field/ray-hit";
import type { Camera } from "./camera";
import { createBenchShader, sideTone, type Surroundings } from "./surroundings";
import { createUndistorter } from "./undistort";

export interface ExposeInput extends Surroundings {
  readonly camera: Camera;
  readonly ceiling: CeilingMap;
  readonly radiance: Float32Array;
  /** Samples per pixel along each side, 1 or 2. */
  readonly samples: number;
}

/** Linear picture before the lens blurs it: RGB triples and the distance of each pixel along the optical axis, mm. */
export interface Exposure {
  readonly rgb: Float32Array;
  readonly depth: Float32Array;
}

/** What one ray brings back: what it met, and red, green, blue and distance added to `sum`. */
type TakeSample = (px: number, py: number, sum: Float64Array) => RayHit;

/** Adds the light at the hit, bilinear between the four grid points around it. */
function addRadiance(radiance: Float32Array, nx: number, hit: RayHit, sum: Float64Array): void {
  const i = hit.fx | 0;
  const j = hit.fy | 0;
  const u = hit.fx - i;
  const v = hit.fy - j;
  const k = 3 * (j * nx + i);
  const up = k + 3 * nx;
  const w00 = (1 - u) * (1 - v);
  const w10 = u * (1 - v);
  const w01 = (1 - u) * v;
  const w11 = u * v;
  sum[0]! += radiance[k]! * w00 + radiance[k + 3]! * w10 + radiance[up]! * w01 + radiance[up + 3]! * w11;
  sum[1]! +=
    radiance[k + 1]! * w00 + radiance[k + 4]! * w10 + radiance[up + 1]! * w01 + radiance[up + 4]! * w11;
  sum[2]! +=
    radiance[k + 2]! * w00 + radiance[k + 5]! * w10 + radiance[up + 2]! * w01 + radiance[up + 5]! * w11;
  sum[3]! += hit.t;
}

function createSampler(input: ExposeInput): TakeSample {
  const { camera, grid, radiance } = input;
  const { nx, stepMm } = grid;
  const [ex, ey, ez] = camera.position;
  const { right, down, forward } = camera;
  const cast = createRayCaster(grid, input.ceiling, camera.position, input.thicknessMm);
  const benchLight = createBenchShader(input);
  const undistort = createUndistorter(camera);
  const hit = createRayHit();
  const tone = new Float32Array(3);
  const c = new Float64Array(2);
  return (px, py, sum) => {
    undistort(px, py, c);
    const cx = c[0]!;
    const cy = c[1]!;
    const dx = right[0] * cx + down[0] * cy + forward[0];
    const dy = right[1] * cx + down[1] * cy + forward[1];
    const dz = right[2] * cx + down[2] * cy + forward[2];
    cast(hit, dx, dy, dz);
    if (hit.kind === "field") {
      addRadiance(radiance, nx, hit, sum);
      return hit;
    }
    if (hit.kind === "side")
      sideTone((hit.axis === 0 ? hit.fy : hit.fx) * stepMm, hit.below, hit.axis, input.rig, tone);
    else hit.t = benchLight(ex, ey, ez, dx, dy, dz, tone);
    for (let i = 0; i < 3; i++) sum[i]! += tone[i]!;
    sum[3]! += hit.t;
    return hit;
  };
}

/** Two rays of one pixel that come back this much apart, in pixel widths, have an edge between them. */
const EDGE_PIXELS = 2.5;

/**
 * Traces the picture's rows r0 to r1 (half-open) into `target`. With two samples a side, two rays on the diagonal go
 * first; the other two follow only where those met different things or the surface breaks between them, for elsewhere
 * the light is as smooth as the grid it is read from.
 */
export function exposeRows(input: ExposeInput, target: Exposure, r0: number, r1: number): void {
  const { camera, samples } = input;
  const sample = createSampler(input);
  const sum = new Float64Array(4);
  for (let row = r0; row < r1; row++) {
    for (let column = 0; column < camera.widthPx; column++) {
      sum.fill(0);
      let rays = 1;
      if (samples === 1) sample(column + 0.5, row + 0.5, sum);
      else {
        const first = sample(column + 0.25, row + 0.25, sum);
        const { kind, t } = first;
        const second = sample(column + 0.75, row + 0.75, sum);
        rays = 2;
        if (second.kind !== kind || Math.abs(second.t - t) * camera.focalPx > EDGE_PIXELS * t) {
          sample(column + 0.75, row + 0.25, sum);
          sample(column + 0.25, row + 0.75, sum);
          rays = 4;
        }
      }
      const at = row * camera.widthPx + column;
      target.rgb[3 * at] = sum[0]! / rays;
      target.rgb[3 * at + 1] = sum[1]! / rays;
      target.rgb[3 * at + 2] = sum[2]! / rays;
      target.depth[at] = sum[3]! / rays;
    }
  }
}
