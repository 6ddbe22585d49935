import { fractalNoise2, noise2, patchMask, smoothstep } from "../noise/noise";
import { createSlowField, type Field } from "../noise/slow-field";
import { HEAT_REACH_MM } from "../field/paint-bead";
import { coats } from "./coats";
import { coat, tintPoint, type SurfacePoint } from "./surface-point";
import { tintStainless } from "./temper-colour";
import type { Finish } from "./finish";

export interface PlateLook {
  readonly finish: Finish;
  readonly seed: number;
  /** Width of the heat band beside the weld, mm. */
  readonly heatBandMm: number;
  /** 0 a clean shop, 1 a plate that lay outside. */
  readonly rust: number;
  /** Half-width of a strip ground bright along the joint, mm; 0 none. */
  readonly groundStripMm: number;
}

/** What changes slowly over the plate, worked out on a lattice (see createSlowField). */
interface SlowFields {
  readonly wear: Field;
  readonly blotch: Field;
  readonly rustSpot: Field;
  readonly flaked: Field;
  readonly cloud: Field;
  readonly bloom: Field;
  readonly heatShift: Field;
  readonly heatWorn: Field;
  readonly oxideShift: Field;
}

function slowFields({ seed, rust, finish }: PlateLook): SlowFields {
  const cover = 0.25 + 0.4 * rust;
  return {
    wear: createSlowField(0.2, (x, s) => fractalNoise2(x * 0.03, s * 0.045, seed + 65, 5)),
    blotch: createSlowField(0.12, (x, s) => fractalNoise2(x * 0.12, s * 0.1, seed + 69, 4)),
    rustSpot: createSlowField(0.12, (x, s) => patchMask(x * 0.11, s * 0.1, seed + 66, 0.1, 0.2)),
    flaked: createSlowField(0.2, (x, s) => patchMask(x * 0.05, s * 0.05, seed + 68, 0.35, 0.2)),
    cloud: createSlowField(0.25, (x, s) => fractalNoise2(x * 0.04, s * 0.05, seed + 61, 3)),
    bloom: createSlowField(0.15, (x, s) => patchMask(x * 0.07, s * 0.07, seed + 81, cover, 0.25)),
    heatShift: createSlowField(0.1, (x, s) => fractalNoise2(x * 0.35, s * 0.35, seed + 72, 3)),
    heatWorn: createSlowField(0.07, (x, s) => fractalNoise2(x * 0.5, s * 0.9, seed + 76, 3)),
    oxideShift: createSlowField(0.1, (x, s) =>
      finish === "stainless" ? fractalNoise2(x * 0.4, s * 0.4, seed + 75, 3) : 0,
    ),
  };
}

/** Scratches by hand and by sliding over other plates: long, thin, at odd angles. */
function handMarks(point: SurfacePoint, x: number, s: number, seed: number): void {
  for (let i = 0; i < 3; i++) {
    const a = 0.35 + i * 1.9 + (seed % 7) * 0.2;
    const along = x * Math.cos(a) + s * Math.sin(a);
    const across = s * Math.cos(a) - x * Math.sin(a) + 0.6 * noise2(along * 0.03, i, seed + 83);
    const line = noise2(along * 0.02 + 5 * i, across * 1.1, seed + 84 + i);
    if (line > 0.72 && noise2(along * 0.05, across * 0.3, seed + 87) > 0)
      coat(point, coats.steel, 0.2 * smoothstep(0.72, 0.8, line));
  }
}

function brightSteel(point: SurfacePoint, look: PlateLook, slow: SlowFields, x: number, s: number): void {
  const { seed } = look;
  const cloud = slow.cloud(x, s);
  const streak = noise2(x * 0.035, s * 2.1, seed + 57) + 0.8 * noise2(x * 0.08, s * 5.5, seed + 58);
  point.rough += 0.05 * cloud + 0.035 * streak;
  tintPoint(point, 0.8, 0.8, 0.81, 0.5 + 0.5 * cloud - 0.32 * streak);
  coat(
    point,
    coats.millScaleWorn,
    look.finish === "brushed" ? 0.18 + 0.4 * patchMask(x * 0.05, s * 0.5, seed + 62, 0.45, 0.4) : 0.05,
  );
  handMarks(point, x, s, seed);
}

/** Share of the strip beside the joint that is ground to bright metal, ragged at its edge. */
function groundShare({ seed, groundStripMm }: PlateLook, x: number, s: number): number {
  if (groundStripMm <= 0 || Math.abs(s) > groundStripMm + 5) return 0;
  const strip =
    groundStripMm +
    1.6 * noise2(x * 0.12, s > 0 ? 1.5 : 4.5, seed + 63) +
    0.5 * noise2(x * 0.9, s * 0.3, seed + 64);
  return smoothstep(strip + 0.8, strip - 0.8, Math.abs(s));
}

function millScale(point: SurfacePoint, look: PlateLook, slow: SlowFields, x: number, s: number): void {
  const { seed } = look;
  const scale = 1 - groundShare(look, x, s);
  if (scale <= 0) return;
  coat(point, coats.millScale, scale);
  coat(point, coats.millScaleWorn, scale * (0.3 + 0.55 * smoothstep(-0.25, 0.45, slow.wear(x, s))));
  tintPoint(point, 0.72, 0.73, 0.76, scale * smoothstep(0.1, -0.5, slow.blotch(x, s)));
  handMarks(point, x, s, seed);
  // Rolled-in grain: scale is peppered at a few tenths and drawn out a little along the rolling direction.
  const pepper = noise2(x * 2.2, s * 2.9, seed + 55) + 0.7 * noise2(x * 5.5, s * 6.5, seed + 56);
  tintPoint(point, 0.62, 0.62, 0.63, scale * 0.5 * (0.6 + pepper));
  point.rough = Math.max(0.25, point.rough + 0.07 * pepper);
  coat(point, coats.rust, scale * 0.35 * slow.rustSpot(x, s));
  const flaked = slow.flaked(x, s);
  if (flaked > 0)
    coat(point, coats.cutEdge, 0.6 * flaked * scale * patchMask(x * 0.5, s * 0.32, seed + 67, 0.1, 0.05));
}

/** Bands on carbon steel from the toe outwards: pale burnt scale, dark, then (bright steel only) straw and blue. */
function heatBand(
  point: SurfacePoint,
  look: PlateLook,
  slow: SlowFields,
  distance: number,
  x: number,
  s: number,
): void {
  if (distance > 4.5 * look.heatBandMm) return;
  const width = look.heatBandMm * (1 + 0.3 * noise2(x * 0.06, s * 0.05, look.seed + 71));
  const d = distance / width + 0.1 * slow.heatShift(x, s);
  if (d > 2.2) return;
  const bright = look.finish !== "mill-scale" ? 1 : Math.abs(s) < look.groundStripMm ? 0.8 : 0.12;
  const worn = 0.72 + 0.4 * slow.heatWorn(x, s);
  coat(point, coats.straw, 0.6 * worn * bright * smoothstep(1.75, 1.3, d) * smoothstep(0.85, 1.2, d));
  coat(point, coats.bronze, 0.5 * worn * bright * smoothstep(1.3, 1.1, d) * smoothstep(0.75, 0.95, d));
  coat(
    point,
    coats.blue,
    0.66 * worn * (0.2 + 0.8 * bright) * smoothstep(1.1, 0.85, d) * smoothstep(0.35, 0.6, d),
  );
  coat(point, coats.heatDark, 0.72 * worn * smoothstep(0.8, 0.45, d) * smoothstep(0.0, 0.25, d));
  coat(
    point,
    coats.heatGrey,
    0.6 * worn * smoothstep(0.5, 0.12, d) * (0.8 + 0.35 * noise2(x * 2, s * 2, look.seed + 73)),
  );
}

/** Sets a point to the plate's surface at its own coordinates (x, s), `heat` the mask from paintBead (0 to 255). */
export type PlateMaterial = (point: SurfacePoint, x: number, s: number, heat: number) => void;

export function createPlateMaterial(look: PlateLook): PlateMaterial {
  const slow = slowFields(look);
  const metal = look.finish === "stainless" ? coats.stainless : coats.steel;
  const skin = look.finish === "mill-scale" ? millScale : brightSteel;
  return (point, x, s, heat) => {
    coat(point, metal, 1);
    skin(point, look, slow, x, s);
    if (look.rust > 0) {
      const bloom = slow.bloom(x, s);
      if (bloom > 0)
        coat(point, coats.rust, look.rust * bloom * (0.55 + 0.35 * noise2(x * 1.4, s * 1.4, look.seed + 82)));
    }
    if (heat === 0) return;
    const distance = (1 - heat / 255) * HEAT_REACH_MM;
    if (look.finish !== "stainless") return heatBand(point, look, slow, distance, x, s);
    const width = look.heatBandMm * (1 + 0.15 * noise2(x * 0.06, s * 0.05, look.seed + 74));
    const oxide = 1.02 - (distance / width) * 0.62 + 0.05 * slow.oxideShift(x, s);
    tintStainless(point, Math.min(1, oxide));
  };
}
