import { noise2 } from "../noise/noise";
import { coat, type Coat, type SurfacePoint } from "./surface-point";

const pairs: readonly { readonly base: Coat; readonly ink: Coat }[] = [
  {
    base: { diffuse: [0.075, 0.074, 0.07], mirror: [0.4, 0.39, 0.37], rough: 0.42 },
    ink: { diffuse: [0.012, 0.012, 0.013], mirror: [0.03, 0.03, 0.03], rough: 0.6 },
  },
  {
    base: { diffuse: [0.12, 0.123, 0.119], mirror: [0.045, 0.045, 0.045], rough: 0.3 },
    ink: { diffuse: [0.03, 0.045, 0.085], mirror: [0.045, 0.045, 0.045], rough: 0.3 },
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

/** Material of the scale object with this code in the object mask (1 based), `ink` 0 to 1. */
export function objectMaterial(point: SurfacePoint, code: number, ink: number, x: number, y: number): void {
  const pair = pairs[code - 1]!;
  coat(point, pair.base, 1);
  const smear = 0.5 + 0.5 * noise2(x * 0.16, y * 0.16, 79);
  point.rough += 0.06 * smear;
  const dirt = 1 - 0.14 * smear * smear;
  point.dr *= dirt;
  point.dg *= dirt;
  point.db *= dirt * 0.98;
  if (code === 1 || code === 3) {
    const streak = code === 1 ? noise2(x * 0.03, y * 3, 80) : 0.6 * noise2(x * 0.2, y * 0.2, 80);
    point.rough += 0.03 * streak;
    point.fr *= 1 + 0.08 * streak;
    point.fg *= 1 + 0.08 * streak;
    point.fb *= 1 + 0.08 * streak;
    const worn = noise2(x * 0.25, y * 0.5, 81) + 0.6 * noise2(x * 1.1, y * 1.3, 82);
    if (worn > 0.85)
      coat(point, { diffuse: [0.05, 0.035, 0.025], mirror: [0.15, 0.13, 0.12], rough: 0.6 }, 0.45);
  }
  coat(point, pair.ink, ink);
}
