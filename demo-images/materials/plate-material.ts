import { fractalNoise2, noise2, patchMask, smoothstep } from "../noise/noise";
import { createSlowField, type Field } from "../noise/slow-field";
import { HEAT_REACH_MM } from "../field/paint-bead";
import { coats } from "./coats";
import { createStainlessOxide } from "./stainless-oxide";
import { coat, tintPoint, type SurfacePoint } from "./surface-point";
import { tintStainless } from "./temper-colour";
import type { PlateLook } from "./plate-look";
import { grindPattern, groundShare } from "./ground-strip";

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
}

function slowFields({ seed, rust }: PlateLook): SlowFields {
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
  };
}

/** Scratches by hand and by sliding over other plates: hair thin, a few as broad as a scriber's, at odd angles. */
function handMarks(point: SurfacePoint, x: number, s: number, seed: number): void {
  for (let i = 0; i < 4; i++) {
    const a = 0.35 + i * 1.27 + (seed % 7) * 0.2;
    const [c, d] = [Math.cos(a), Math.sin(a)];
    const along = x * c + s * d;
    const across = s * c - x * d + 0.9 * noise2(along * 0.021, i, seed + 83);
    const broad = i === 0 ? 1.3 : 3.4;
    const line = noise2(along * 0.018 + 5 * i, across * broad, seed + 84 + i);
    if (line < 0.7) continue;
    const pressed = noise2(along * 0.045, across * 0.25, seed + 87 + i);
    if (pressed > 0) coat(point, coats.steel, Math.min(0.34, 1.3 * pressed) * smoothstep(0.7, 0.8, line));
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

function millScale(point: SurfacePoint, look: PlateLook, slow: SlowFields, x: number, s: number): void {
  const { seed } = look;
  const scale = 1 - groundShare(look, x, s);
  if (scale < 1) {
    const streak = grindPattern(x, s, seed + 110);
    tintPoint(point, 0.6, 0.6, 0.61, (1 - scale) * Math.max(0, 0.4 + 0.75 * streak));
    point.rough += 0.06 * streak * (1 - scale);
  }
  if (scale <= 0) return;
  coat(point, coats.millScale, scale);
  coat(point, coats.millScaleWorn, scale * (0.22 + 0.6 * smoothstep(-0.25, 0.45, slow.wear(x, s))));
  tintPoint(point, 0.74, 0.75, 0.77, scale * smoothstep(0.2, -0.6, slow.blotch(x, s)));
  // Roll marks: faint bands along the rolling direction.
  const rolled = noise2(x * 0.012, s * 0.55, seed + 53);
  tintPoint(point, 0.8, 0.8, 0.81, scale * (0.5 + 0.5 * rolled));
  handMarks(point, x, s, seed);
  // Rolled-in grain: scale is peppered at a tenth or two and drawn out a little along the rolling direction.
  const pepper = 0.6 * noise2(x * 3.1, s * 4.4, seed + 55) + 0.8 * noise2(x * 8.5, s * 10, seed + 56);
  tintPoint(point, 0.62, 0.62, 0.63, scale * 0.3 * (0.6 + pepper));
  point.rough = Math.max(0.25, point.rough + 0.06 * pepper - 0.05 * rolled);
  const rust = slow.rustSpot(x, s);
  if (rust > 0) coat(point, coats.rust, scale * 0.55 * rust * smoothstep(-0.2, 0.75, pepper + 0.5 * rust));
  const flaked = slow.flaked(x, s);
  if (flaked > 0)
    coat(point, coats.cutEdge, 0.6 * flaked * scale * patchMask(x * 0.8, s * 0.5, seed + 67, 0.08, 0.035));
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
  const d = distance / width + 0.17 * slow.heatShift(x, s);
  if (d > 2.2) return;
  const bright = look.finish !== "mill-scale" ? 1 : Math.abs(s) < look.groundStripMm ? 0.8 : 0.12;
  const worn = 0.8 + 0.2 * slow.heatWorn(x, s);
  coat(point, coats.straw, 0.6 * worn * bright * smoothstep(1.75, 1.3, d) * smoothstep(0.85, 1.2, d));
  coat(point, coats.bronze, 0.5 * worn * bright * smoothstep(1.3, 1.1, d) * smoothstep(0.75, 0.95, d));
  coat(
    point,
    coats.blue,
    0.66 * worn * (0.1 + 0.9 * bright) * smoothstep(1.1, 0.85, d) * smoothstep(0.35, 0.6, d),
  );
  coat(
    point,
    coats.heatDark,
    (0.5 + 0.22 * bright) * worn * smoothstep(0.8, 0.45, d) * smoothstep(0.0, 0.25, d),
  );
  coat(
    point,
    coats.heatGrey,
    0.5 * worn * smoothstep(0.5, 0.12, d) * (0.8 + 0.35 * noise2(x * 5, s * 5, look.seed + 73)),
  );
}

/** Rust is grains and pits, never a wash: 0 to 1. */
const rustGrain = (x: number, s: number, seed: number): number =>
  smoothstep(-0.45, 0.7, 0.6 * noise2(x * 1.4, s * 1.4, seed) + 0.6 * noise2(x * 5.2, s * 5.2, seed + 1));

/** Sets a point to the plate's surface at its own coordinates (x, s), `heat` the mask from paintBead (0 to 255). */
export type PlateMaterial = (point: SurfacePoint, x: number, s: number, heat: number) => void;

export function createPlateMaterial(look: PlateLook): PlateMaterial {
  const slow = slowFields(look);
  const oxide = createStainlessOxide(look);
  const metal = look.finish === "stainless" ? coats.stainless : coats.steel;
  const skin = look.finish === "mill-scale" ? millScale : brightSteel;
  return (point, x, s, heat) => {
    coat(point, metal, 1);
    skin(point, look, slow, x, s);
    if (look.rust > 0) {
      const bloom = slow.bloom(x, s);
      if (bloom > 0) coat(point, coats.rust, look.rust * bloom * rustGrain(x, s, look.seed + 82));
    }
    if (heat === 0) return;
    if (look.finish !== "stainless")
      return heatBand(point, look, slow, (1 - heat / 255) * HEAT_REACH_MM, x, s);
    tintStainless(point, oxide(x, s, heat));
  };
}
