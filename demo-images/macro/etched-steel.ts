import { fractalNoise2, noise2, patchMask, smoothstep, whiteNoise } from "../noise/noise";
import { createSlowField } from "../noise/slow-field";
import {
  alongAt,
  convexDistance,
  distanceAt,
  distanceGrid,
  fieldGrid,
  type DistanceGrid,
} from "./distance-grid";
import type { At, MacroSpec } from "./macro-spec";

/** A polished and etched face: what it reflects at a place in mm; and how far a place lies off the coupon. */
export interface EtchedFace {
  /** Linear RGB written to `out`; call it inside the coupon only. */
  readonly colour: (x: number, y: number, out: Float64Array) => void;
  /** Signed distance from the edge of the coupon, negative inside. */
  readonly offCoupon: (x: number, y: number) => number;
}

const GRID_MM = 0.14;

interface Fields {
  readonly weld: DistanceGrid;
  readonly bottom: DistanceGrid;
  readonly faults: readonly { readonly look: string; readonly grid: DistanceGrid }[];
  readonly seams: DistanceGrid | null;
}

function boxOf(points: readonly At[], margin: number) {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return {
    x0: Math.min(...xs) - margin,
    x1: Math.max(...xs) + margin,
    y0: Math.min(...ys) - margin,
    y1: Math.max(...ys) + margin,
  };
}

/** The outline from toe 2 round by the root to toe 1: where the metal froze from. */
function frozenFrom({ outline, toes }: MacroSpec): readonly At[] {
  const index = (toe: At): number => outline.findIndex(([x, y]) => Math.hypot(x - toe[0], y - toe[1]) < 1e-6);
  const [from, to] = [index(toes[1]), index(toes[0])];
  const n = outline.length;
  const steps = (to - from + n) % n;
  return Array.from({ length: steps + 1 }, (_, i) => outline[(from + i) % n]!);
}

function fieldsOf(spec: MacroSpec): Fields {
  const thin = <T>(list: readonly T[]): readonly T[] =>
    list.filter((_, i) => i % 3 === 0 || i === list.length - 1);
  const box = boxOf(spec.outline, spec.hazMm + 2);
  return {
    weld: distanceGrid(thin(spec.outline), true, box, GRID_MM),
    bottom: distanceGrid(thin(frozenFrom(spec)), false, box, GRID_MM),
    faults: spec.faults.map(({ look, points }) => ({
      look,
      grid: distanceGrid(points, look !== "line", boxOf(points, 1.5), 0.05),
    })),
    seams:
      spec.seams.length === 0 ? null : distanceGrid(spec.seams[0]!, false, boxOf(spec.seams[0]!, 0.6), 0.1),
  };
}

const inBox = (grid: DistanceGrid, x: number, y: number): boolean =>
  x > grid.x0 && y > grid.y0 && x < grid.x0 + grid.nx * grid.stepMm && y < grid.y0 + grid.ny * grid.stepMm;

/** Grains as patches of one tone each: a jittered lattice, the tone of the nearest point. */
function grains(x: number, y: number, sizeMm: number, seed: number): number {
  const [fx, fy] = [x / sizeMm, y / sizeMm];
  const [ix, iy] = [Math.floor(fx), Math.floor(fy)];
  let best = Infinity;
  let tone = 0;
  for (let j = iy - 1; j <= iy + 1; j++)
    for (let i = ix - 1; i <= ix + 1; i++) {
      const dx = i + 0.5 + 0.45 * whiteNoise(i, j, seed) - fx;
      const dy = j + 0.5 + 0.45 * whiteNoise(i, j, seed + 1) - fy;
      const d = dx * dx + dy * dy;
      if (d < best) {
        best = d;
        tone = whiteNoise(i, j, seed + 2);
      }
    }
  return tone;
}

/** Parent metal: fine grain, and the faint bands of rolling along the plate. */
function parentTone(x: number, y: number, seed: number): number {
  const band = noise2(x * 0.05, y * 2.2, seed) + 0.5 * noise2(x * 0.08, y * 5, seed + 1);
  const grain = noise2(x * 9, y * 9, seed + 2) + 0.6 * noise2(x * 21, y * 21, seed + 3);
  return 0.27 * (1 + 0.05 * band + 0.055 * grain);
}

/** Heat-affected metal by its distance from the weld: coarse and dark close by, fine and dark beyond, then a pale rim. */
function hazTone(x: number, y: number, d: number, hazMm: number, seed: number): number {
  const share = d / hazMm;
  const coarse = 1 - smoothstep(0.05, 0.4, share);
  const grain = coarse * 0.2 * grains(x, y, 0.2, seed + 5) + 0.09 * noise2(x * 8, y * 8, seed + 6);
  const dark = 0.115 + 0.05 * smoothstep(0.2, 0.75, share);
  const edge = smoothstep(0.86, 1, share);
  const rim = 0.04 * Math.exp(-(((share - 0.93) / 0.06) ** 2));
  return dark * (1 + grain) * (1 - edge) + parentTone(x, y, seed) * edge - rim;
}

/** Columns that grew square to where the metal froze from, and the fine net inside them. */
function weldTone(along: number, depth: number, x: number, y: number, seed: number): number {
  const drift = 0.5 * noise2(x * 0.35, y * 0.35, seed + 11);
  const wide = noise2((along + drift) * 2.1, depth * 0.2, seed + 12);
  const fine = noise2((along + 0.6 * drift) * 5.6, depth * 0.5, seed + 13);
  const hair = noise2(along * 13, depth * 1.6, seed + 14);
  return 0.185 * (1 + 0.26 * wide + 0.24 * fine + 0.1 * hair + 0.06 * noise2(x * 7, y * 7, seed + 15));
}

export function etchedFace(spec: MacroSpec, seed: number): EtchedFace {
  const fields = fieldsOf(spec);
  const cloud = createSlowField(0.5, (x, y) => fractalNoise2(x * 0.05, y * 0.05, seed + 20, 3));
  const stain = createSlowField(0.25, (x, y) => patchMask(x * 0.09, y * 0.09, seed + 21, 0.16, 0.2));
  const wander = createSlowField(0.2, (x, y) => fractalNoise2(x * 0.5, y * 0.5, seed + 22, 3));
  const grooves = fields.faults.filter(({ look }) => look === "groove");
  const exactly = (x: number, y: number): number => {
    const plates = Math.min(...spec.plates.map((ring) => convexDistance(ring, x, y)));
    const hollow = grooves.reduce(
      (most, { grid }) => (inBox(grid, x, y) ? Math.max(most, -distanceAt(grid, x, y)) : most),
      -Infinity,
    );
    const weld = inBox(fields.weld, x, y) ? distanceAt(fields.weld, x, y) : Infinity;
    return Math.min(weld, Math.max(plates, hollow));
  };
  // Held at its border, ten millimetres out: farther off nothing asks how far.
  const coupon = fieldGrid(exactly, boxOf([...spec.plates.flat(), ...spec.outline], 10), 0.12);
  const offCoupon = (x: number, y: number): number => distanceAt(coupon, x, y);
  return {
    offCoupon,
    colour: (x, y, out) => {
      const tone = faceTone(spec, fields, x, y, wander(x, y), seed) * scratched(x, y, seed);
      const [warm, dim] = [0.06 * stain(x, y), 1 - 0.16 * stain(x, y) + 0.05 * cloud(x, y)];
      const edge = 0.62 + 0.38 * smoothstep(0, 0.16, -offCoupon(x, y));
      out[0] = tone * dim * edge * (1.02 + warm);
      out[1] = tone * dim * edge;
      out[2] = tone * dim * edge * (0.95 - warm);
    },
  };
}

function faceTone(
  spec: MacroSpec,
  fields: Fields,
  x: number,
  y: number,
  wander: number,
  seed: number,
): number {
  let tone = parentTone(x, y, seed);
  if (inBox(fields.weld, x, y)) {
    const d = distanceAt(fields.weld, x, y);
    const fromBottom = distanceAt(fields.bottom, x, y);
    // Heat came from the weld, not through its face: what lies beyond a toe is out of the coupon anyway.
    const haz = spec.hazMm * (1 + 0.12 * wander);
    if (d <= 0) tone = inWeld(spec, fields, x, y, fromBottom, wander, seed);
    else if (d < haz) tone = hazTone(x, y, d, haz, seed);
    // The line of fusion itself etches a shade darker.
    tone *= 1 - 0.3 * Math.exp(-((d / 0.07) ** 2)) * smoothstep(0.5, 0.1, fromBottom);
  }
  if (fields.seams !== null && inBox(fields.seams, x, y)) {
    const gap = distanceAt(fields.seams, x, y) - 0.045 - 0.02 * noise2(x * 1.5, 0, seed + 30);
    if (!inBox(fields.weld, x, y) || distanceAt(fields.weld, x, y) > 0)
      tone *= 0.12 + 0.88 * smoothstep(-0.02, 0.05, gap);
  }
  for (const { look, grid } of fields.faults) {
    if (look === "groove" || !inBox(grid, x, y)) continue;
    const d = distanceAt(grid, x, y);
    if (look === "line") tone *= 0.1 + 0.9 * smoothstep(0.03, 0.09, d + 0.02 * wander);
    else if (look === "hole")
      tone *= d < 0 ? 0.07 + 0.25 * smoothstep(-0.5, 0, d) : 1 + 0.25 * Math.exp(-d / 0.05);
    else if (d < 0)
      tone =
        0.075 * (1 + 0.4 * noise2(x * 6, y * 6, seed + 31)) +
        0.01 * whiteNoise((x * 20) | 0, (y * 20) | 0, seed);
  }
  return tone;
}

/** Single-run metal shows its columns; a later run re-heats what lies under it, in a dark band along its edge. */
function inWeld(
  spec: MacroSpec,
  fields: Fields,
  x: number,
  y: number,
  fromBottom: number,
  wander: number,
  seed: number,
): number {
  let along = alongAt(fields.bottom, x, y);
  let depth = fromBottom;
  let reheated = 1;
  let run = 0;
  for (const { yMm, sag } of spec.runs) {
    const above = y - (yMm + sag * x * x * 0.05 + 0.25 * wander);
    if (above > 0) {
      run++;
      if (above < depth) {
        depth = above;
        along = x * 1.05 + 31 * run;
      }
      reheated = 1 - 0.22 * Math.exp(-((above / 0.06) ** 2));
    } else {
      reheated *=
        1 - 0.3 * (1 - smoothstep(0.5, 1.6, -above)) * (0.75 + 0.25 * grains(x, y, 0.16, seed + 40));
      break;
    }
  }
  return weldTone(along, depth, x, y, seed + 97 * run) * reheated;
}

/** What is left of the last grit: hair lines one way, and a few deeper ones across. */
function scratched(x: number, y: number, seed: number): number {
  const hair = noise2((x * 0.94 + y * 0.34) * 0.12, (y * 0.94 - x * 0.34) * 9, seed + 50);
  const deep = noise2((x * 0.5 - y * 0.87) * 0.04, (y * 0.5 + x * 0.87) * 2.4, seed + 51);
  return 1 + 0.035 * hair + 0.16 * smoothstep(0.78, 0.9, deep) - 0.14 * smoothstep(0.8, 0.92, -deep);
}
