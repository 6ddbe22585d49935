import type { Vec3 } from "../geometry/vector";
import { normalise } from "../geometry/vector";
import { createRandom } from "../noise/random";

/** A soft lamp as a spherical Gaussian: brightest along `towards`, falling off with `sharpness`. */
export interface Lamp {
  /** From the work towards the lamp, unit length. */
  readonly towards: Vec3;
  /** 2 a bright wall, 20 a window, 200 a bare bulb. */
  readonly sharpness: number;
  /** Linear RGB irradiance on a surface that faces it. */
  readonly colour: Vec3;
  readonly castsShadow: boolean;
}

export const lightings = ["overhead", "window", "raking", "flash"] as const;
export type Lighting = (typeof lightings)[number];

/** How unevenly the lamps light the work; plan frame, mm. */
export interface LightFall {
  /** Where the light is strongest, and how far from there it is down to half. */
  readonly xMm: number;
  readonly yMm: number;
  readonly reachMm: number;
  /** The soft shadow of whoever holds the phone: which way it lies, how far off, how soft, and what it takes (0 to 1). */
  readonly bodyRad: number;
  readonly bodyMm: number;
  readonly bodySoftMm: number;
  readonly bodyShare: number;
}

export interface LightRig {
  readonly lamps: readonly Lamp[];
  readonly fall: LightFall;
  readonly sky: Vec3;
  readonly floor: Vec3;
}

interface LampRow {
  /** Right, away (up in the picture), towards the viewer; in workshop axes. */
  readonly from: Vec3;
  readonly sharpness: number;
  readonly power: number;
  readonly warmth: number;
  readonly castsShadow?: true;
}

/** Lamps by kind of light; *common practice, no source*: how these benches are lit. */
const rows: Readonly<Record<Lighting, readonly LampRow[]>> = {
  overhead: [
    { from: [-0.35, 0.5, 0.9], sharpness: 22, power: 1.5, warmth: -0.02, castsShadow: true },
    { from: [0.65, 0.15, 0.8], sharpness: 40, power: 0.45, warmth: -0.04 },
    { from: [0.2, 0.55, 0.95], sharpness: 420, power: 0.45, warmth: -0.03 },
    { from: [0.1, -0.9, 0.6], sharpness: 3, power: 0.4, warmth: 0.06 },
    { from: [-0.95, -0.1, 0.3], sharpness: 6, power: 0.25, warmth: 0.02 },
  ],
  window: [
    { from: [-0.85, 0.45, 0.55], sharpness: 14, power: 1.7, warmth: -0.12, castsShadow: true },
    { from: [-0.5, 0.8, 0.7], sharpness: 40, power: 0.35, warmth: -0.1 },
    { from: [0.3, 0.4, 1], sharpness: 420, power: 0.35, warmth: 0.05 },
    { from: [0.9, -0.1, 0.4], sharpness: 4, power: 0.22, warmth: 0.12 },
    { from: [0.1, -0.3, 1], sharpness: 4, power: 0.3, warmth: 0 },
  ],
  raking: [
    { from: [-0.9, 0.35, 0.3], sharpness: 90, power: 1.7, warmth: 0.1, castsShadow: true },
    { from: [0.3, 0.6, 0.8], sharpness: 8, power: 0.35, warmth: -0.06 },
    { from: [-0.1, 0.7, 0.9], sharpness: 420, power: 0.3, warmth: -0.03 },
    { from: [0.6, -0.6, 0.6], sharpness: 3, power: 0.26, warmth: 0 },
  ],
  flash: [
    { from: [0.06, 0.12, 1], sharpness: 260, power: 1.6, warmth: 0.0, castsShadow: true },
    { from: [-0.4, 0.6, 0.7], sharpness: 10, power: 0.35, warmth: 0.1 },
    { from: [0.7, 0.2, 0.6], sharpness: 5, power: 0.2, warmth: 0.08 },
  ],
};

/** Where light is strongest (share of `off` towards the key lamp) and how far it reaches, by kind; *common practice, no source*. */
const falls: Readonly<
  Record<Lighting, { readonly offMm: number; readonly reachMm: number; readonly body: number }>
> = {
  overhead: { offMm: 75, reachMm: 190, body: 0.4 },
  window: { offMm: 95, reachMm: 170, body: 0.34 },
  raking: { offMm: 110, reachMm: 150, body: 0.25 },
  flash: { offMm: 12, reachMm: 105, body: 0 },
};

function createFall(kind: Lighting, key: Vec3, seed: number): LightFall {
  const random = createRandom(seed);
  const { offMm, reachMm, body } = falls[kind];
  const towards = Math.atan2(key[1], key[0]) + random.normal(0, 0.3);
  // The body stands where the picture is taken from: below it, to one side, and away from the lamp.
  return {
    xMm: offMm * Math.cos(towards),
    yMm: offMm * Math.sin(towards),
    reachMm: reachMm * random.between(0.85, 1.2),
    bodyRad: -Math.PI / 2 + random.between(-0.9, 0.9),
    bodyMm: random.between(24, 52),
    bodySoftMm: random.between(20, 34),
    bodyShare: body * random.between(0.5, 1.15),
  };
}

/** `turn` turns the lamps about the viewing axis, radians; `up` is the workshop's up in the plan frame. */
export function createLightRig(kind: Lighting, turn: number, up: Vec3, seed: number): LightRig {
  // Who photographs a corner turns it so that the lamps stand a little above the line of sight.
  const lean = Math.atan2(up[1], up[2]) * 0.2;
  const place = (v: Vec3): Vec3 => {
    const x = v[0] * Math.cos(turn) - v[1] * Math.sin(turn);
    const y = v[0] * Math.sin(turn) + v[1] * Math.cos(turn);
    return normalise([
      x,
      y * Math.cos(lean) + v[2] * Math.sin(lean),
      -y * Math.sin(lean) + v[2] * Math.cos(lean),
    ]);
  };
  const lamps = rows[kind].map((row): Lamp => ({
    towards: place(row.from),
    sharpness: row.sharpness,
    colour: [row.power * (1 + row.warmth), row.power, row.power * (1 - row.warmth)],
    castsShadow: row.castsShadow === true,
  }));
  const dim = kind === "flash" ? 0.5 : 1;
  const fall = createFall(kind, lamps[0]!.towards, seed);
  return {
    lamps,
    fall,
    sky: [0.305 * dim, 0.31 * dim, 0.32 * dim],
    floor: [0.1 * dim, 0.092 * dim, 0.083 * dim],
  };
}
