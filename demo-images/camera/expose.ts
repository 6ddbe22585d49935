import type { CeilingMap } from "../field/ray-hit";
import { createRayCaster, createRayHit } from "../field/ray-hit";
import type { HeightGrid } from "../field/height-grid";
import { dot, type Vec3 } from "../geometry/vector";
import { noise2 } from "../noise/noise";
import type { LightRig } from "../light/lamp";
import type { BenchColour } from "../materials/bench";
import { undistort, type Camera } from "./camera";

export interface ExposeInput {
  readonly camera: Camera;
  readonly grid: HeightGrid;
  readonly ceiling: CeilingMap;
  readonly radiance: Float32Array;
  readonly rig: LightRig;
  readonly up: Vec3;
  readonly bench: BenchColour;
  readonly thicknessMm: number;
  /** Samples per pixel along each side. */
  readonly samples: number;
}

/** Linear picture before the lens blurs it: RGB triples and the distance of each pixel along the optical axis, mm. */
export interface Exposure {
  readonly rgb: Float32Array;
  readonly depth: Float32Array;
}

type BenchShader = (
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  out: Float32Array,
) => number;

/** Light from the bench under the plate, with the plate's shadow on it; returns the ray's length or -1. */
function createBenchShader(input: ExposeInput): BenchShader {
  const { up, rig, grid, thicknessMm, bench } = input;
  const across: Vec3 = [0, up[2], -up[1]];
  const key = rig.lamps.find((lamp) => lamp.castsShadow) ?? rig.lamps[0]!;
  const keyUp = Math.max(0.15, dot(key.towards, up));
  const shiftX = (key.towards[0] / keyUp) * thicknessMm;
  const shiftY = (dot(key.towards, across) / keyUp) * thicknessMm;
  const x1 = grid.x0 + (grid.nx - 1) * grid.stepMm;
  const y1 = grid.y0 + (grid.ny - 1) * grid.stepMm;
  const foot = up[1] === 0 ? { y0: grid.y0, y1 } : { y0: grid.y0 * Math.SQRT2, y1: 8 };
  const outside = (x: number, y: number): number =>
    Math.hypot(Math.max(grid.x0 - x, x - x1, 0), Math.max(foot.y0 - y, y - foot.y1, 0));
  const colour = new Float32Array(3);
  const soft = 1.5 + thicknessMm * 0.5;
  return (ox, oy, oz, dx, dy, dz, out) => {
    const fall = dx * up[0] + dy * up[1] + dz * up[2];
    const height = ox * up[0] + oy * up[1] + oz * up[2] + thicknessMm;
    if (fall >= -1e-4) {
      out[0] = rig.sky[0] * 0.35;
      out[1] = rig.sky[1] * 0.35;
      out[2] = rig.sky[2] * 0.35;
      return 1500;
    }
    const t = -height / fall;
    const px = ox + dx * t;
    const py = (oy + dy * t) * across[1] + (oz + dz * t) * across[2];
    bench(px, py, colour);
    const contact = 1 - 0.8 * Math.exp(-outside(px, py) / (0.5 * thicknessMm + 1.5));
    const shadow = Math.min(1, outside(px + shiftX, py + shiftY) / soft);
    const far = 1 / (1 + (Math.hypot(px, py) / 420) ** 2);
    for (let c = 0; c < 3; c++) {
      let light = (rig.sky[c]! * 0.9 + 0.02) * contact;
      for (const lamp of rig.lamps)
        light +=
          (lamp.colour[c]! * Math.max(0.1, dot(lamp.towards, up)) * (lamp.castsShadow ? shadow : contact)) /
          Math.PI;
      out[c] = colour[c]! * light * far;
    }
    return t;
  };
}

/** A sheared or sawn edge of the plate: bright above, torn and dark below. */
function sideTone(along: number, below: number, axis: 0 | 1, rig: LightRig, out: Float32Array): void {
  const streak =
    noise2(along * 2.2, below * (axis === 0 ? 0.6 : 0.4), 611) + 0.5 * noise2(along * 7, below * 1.5, 612);
  const tone = (0.09 + 0.035 * streak) * (below < 0.25 ? 2.2 : 1) * (0.4 + 0.6 * Math.exp(-below / 5));
  for (let c = 0; c < 3; c++) out[c] = tone * (rig.sky[c]! * 1.4 + 0.25 * (rig.lamps[0]?.colour[c] ?? 0));
}

/** Traces the picture's rows r0 to r1 (half-open) into `target`. */
export function exposeRows(input: ExposeInput, target: Exposure, r0: number, r1: number): void {
  const { camera, grid, radiance, samples } = input;
  const { nx, stepMm } = grid;
  const [ex, ey, ez] = camera.position;
  const cast = createRayCaster(grid, input.ceiling, camera.position, input.thicknessMm);
  const benchLight = createBenchShader(input);
  const hit = createRayHit();
  const tone = new Float32Array(3);
  const { right, down, forward } = camera;
  const share = 1 / (samples * samples);
  for (let row = r0; row < r1; row++) {
    for (let column = 0; column < camera.widthPx; column++) {
      let r = 0;
      let g = 0;
      let b = 0;
      let far = 0;
      for (let q = 0; q < samples * samples; q++) {
        const sx = ((q % samples) + 0.5) / samples;
        const sy = (Math.floor(q / samples) + 0.5) / samples;
        const [cx, cy] = undistort(camera, column + sx, row + sy);
        const dx = right[0] * cx + down[0] * cy + forward[0];
        const dy = right[1] * cx + down[1] * cy + forward[1];
        const dz = right[2] * cx + down[2] * cy + forward[2];
        cast(hit, dx, dy, dz);
        if (hit.kind === "field") {
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
          r += radiance[k]! * w00 + radiance[k + 3]! * w10 + radiance[up]! * w01 + radiance[up + 3]! * w11;
          g +=
            radiance[k + 1]! * w00 +
            radiance[k + 4]! * w10 +
            radiance[up + 1]! * w01 +
            radiance[up + 4]! * w11;
          b +=
            radiance[k + 2]! * w00 +
            radiance[k + 5]! * w10 +
            radiance[up + 2]! * w01 +
            radiance[up + 5]! * w11;
          far += hit.t;
          continue;
        }
        if (hit.kind === "side") {
          sideTone((hit.axis === 0 ? hit.fy : hit.fx) * stepMm, hit.below, hit.axis, input.rig, tone);
          far += hit.t;
        } else {
          far += benchLight(ex, ey, ez, dx, dy, dz, tone);
        }
        r += tone[0]!;
        g += tone[1]!;
        b += tone[2]!;
      }
      const at = row * camera.widthPx + column;
      target.rgb[3 * at] = r * share;
      target.rgb[3 * at + 1] = g * share;
      target.rgb[3 * at + 2] = b * share;
      target.depth[at] = far * share;
    }
  }
}
