import type { HeightGrid } from "../field/height-grid";
import { dot, type Vec3 } from "../geometry/vector";
import { noise2 } from "../noise/noise";
import type { LightRig } from "../light/lamp";
import { createFallOff } from "../light/light-fall";
import type { BenchColour } from "../materials/bench";

export interface Surroundings {
  readonly grid: HeightGrid;
  readonly rig: LightRig;
  readonly up: Vec3;
  readonly bench: BenchColour;
  readonly thicknessMm: number;
}

/** Light that comes back along the ray from (ox, oy, oz) towards (dx, dy, dz); returns the ray's length. */
export type BenchShader = (
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  out: Float32Array,
) => number;

/** How far outside the plate's footprint a place on the bench lies, mm. */
function footprint(grid: HeightGrid, up: Vec3): (x: number, y: number) => number {
  const x1 = grid.x0 + (grid.nx - 1) * grid.stepMm;
  const y1 = grid.y0 + (grid.ny - 1) * grid.stepMm;
  const foot = up[1] === 0 ? { y0: grid.y0, y1 } : { y0: grid.y0 * Math.SQRT2, y1: 8 };
  return (x, y) => {
    const dx = Math.max(grid.x0 - x, x - x1, 0);
    const dy = Math.max(foot.y0 - y, y - foot.y1, 0);
    return Math.sqrt(dx * dx + dy * dy);
  };
}

/** Light from the bench under the plate, with the plate's shadow on it. */
export function createBenchShader({ up, rig, grid, thicknessMm, bench }: Surroundings): BenchShader {
  const across: Vec3 = [0, up[2], -up[1]];
  const key = rig.lamps.find((lamp) => lamp.castsShadow) ?? rig.lamps[0]!;
  const keyUp = Math.max(0.15, dot(key.towards, up));
  const shiftX = (key.towards[0] / keyUp) * thicknessMm;
  const shiftY = (dot(key.towards, across) / keyUp) * thicknessMm;
  const outside = footprint(grid, up);
  const colour = new Float32Array(3);
  const lamps = rig.lamps.map((lamp) => ({ ...lamp, falls: Math.max(0.1, dot(lamp.towards, up)) / Math.PI }));
  const soft = 1.5 + thicknessMm * 0.5;
  const fallOff = createFallOff(rig.fall);
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
    const far = 1 / (1 + (px * px + py * py) / (420 * 420));
    const reached = fallOff(px, py);
    for (let c = 0; c < 3; c++) {
      let light = (rig.sky[c]! * 0.9 + 0.02) * contact;
      for (const lamp of lamps)
        light += lamp.colour[c]! * lamp.falls * reached * (lamp.castsShadow ? shadow : contact);
      out[c] = colour[c]! * light * far;
    }
    return t;
  };
}

/** A sheared edge of the plate: bright and drawn above where the blade cut, torn and dark below. */
export function sideTone(along: number, below: number, axis: 0 | 1, rig: LightRig, out: Float32Array): void {
  const drawn = noise2(along * 4.2, below * 0.22, 611 + axis) + 0.6 * noise2(along * 11, below * 0.5, 612);
  const torn = noise2(along * 1.7, below * 2.6, 613) + 0.5 * noise2(along * 6, below * 7, 614);
  const share = Math.min(1, Math.max(0, (below - 1.6 - 0.5 * noise2(along * 0.3, 0, 615)) / 0.7));
  const streak = drawn + (torn - drawn) * share;
  const tone =
    (0.085 + 0.026 * streak) * (below < 0.2 ? 1.8 : 1 - 0.3 * share) * (0.4 + 0.6 * Math.exp(-below / 5));
  for (let c = 0; c < 3; c++)
    out[c] = tone * (1.06 - 0.06 * c) * (rig.sky[c]! * 1.4 + 0.25 * (rig.lamps[0]?.colour[c] ?? 0));
}
