import { noise2, smoothstep } from "../noise/noise";
import { coat, tintPoint, type Coat, type SurfacePoint } from "./surface-point";

const pairs: readonly { readonly base: Coat; readonly ink: Coat }[] = [
  {
    base: { diffuse: [0.075, 0.074, 0.07], mirror: [0.4, 0.39, 0.37], rough: 0.42 },
    ink: { diffuse: [0.012, 0.012, 0.013], mirror: [0.03, 0.03, 0.03], rough: 0.6 },
  },
  {
    base: { diffuse: [0.27, 0.274, 0.263], mirror: [0.045, 0.045, 0.045], rough: 0.34 },
    ink: { diffuse: [0.05, 0.085, 0.17], mirror: [0.045, 0.045, 0.045], rough: 0.34 },
  },
  {
    base: { diffuse: [0.07, 0.066, 0.06], mirror: [0.52, 0.5, 0.46], rough: 0.36 },
    ink: { diffuse: [0, 0, 0], mirror: [0, 0, 0], rough: 0.5 },
  },
  {
    base: { diffuse: [0.6, 0.59, 0.56], mirror: [0.03, 0.03, 0.03], rough: 0.75 },
    ink: { diffuse: [0.022, 0.022, 0.024], mirror: [0.03, 0.03, 0.03], rough: 0.6 },
  },
];

const stain: Coat = { diffuse: [0.06, 0.04, 0.026], mirror: [0.16, 0.13, 0.1], rough: 0.6 };
/** Cosine and sine of each family of scratches, and its seed. */
const slants = [
  [0.96, 0.28, 83],
  [0.8, -0.6, 84],
] as const;

/** Material of the scale object with this code in the object mask (1 based), `ink` 0 to 1. */
export function objectMaterial(point: SurfacePoint, code: number, ink: number, x: number, y: number): void {
  const pair = pairs[code - 1]!;
  coat(point, pair.base, 1);
  const smear = 0.5 + 0.5 * noise2(x * 0.16, y * 0.16, 79);
  const hold = code === 2 ? 0.35 : 1;
  point.rough += 0.06 * hold * smear;
  const dirt = 1 - 0.14 * hold * smear * smear;
  point.dr *= dirt;
  point.dg *= dirt;
  point.db *= dirt * 0.98;
  if (code === 1 || code === 3) {
    const streak = code === 1 ? noise2(x * 0.03, y * 3, 80) : 0.6 * noise2(x * 0.2, y * 0.2, 80);
    point.rough += 0.03 * streak;
    point.fr *= 1 + 0.08 * streak;
    point.fg *= 1 + 0.08 * streak;
    point.fb *= 1 + 0.08 * streak;
    wear(point, x, y);
  }
  coat(point, pair.ink, ink);
}

/** What years in a toolbox leave on steel: hair scratches at a slant, and brown breath where damp fingers held it. */
function wear(point: SurfacePoint, x: number, y: number): void {
  for (const [cos, sin, seed] of slants) {
    const line = noise2((x * cos + y * sin) * 0.05, (y * cos - x * sin) * 3.8, seed);
    if (line > 0.68) tintPoint(point, 0.78, 0.78, 0.78, 0.7 * smoothstep(0.68, 0.82, line));
  }
  const breath = noise2(x * 0.1, y * 0.17, 81) + 0.3 * noise2(x * 0.3, y * 0.4, 82);
  coat(point, stain, 0.16 * smoothstep(0.2, 1.1, breath));
}
