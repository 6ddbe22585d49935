import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { FaceStrip } from "./rendered/face-strip";
import { plainest, ripplesOf } from "./rendered/ripples";
import { random } from "../diagnose/sweep/grid";
import { itDeep } from "../../setup/in-depth";
import { shuffled } from "./rendered/ripple-study";

const ROWS = 33;
const WIDE = 60;
const COLUMNS = 600;

/** As good as normal, deviation 1. */
const normalOf =
  (chance: () => number): (() => number) =>
  () =>
    Array.from({ length: 12 }, chance).reduce((a, b) => a + b) - 6;

interface Laid {
  /** From ripple to ripple, widths of the bead; 0: no ripples. */
  readonly spacing: number;
  readonly spread: number;
  readonly lag: number;
  readonly grain: number;
  readonly seed: number;
}

/** A face with dark crescents at uneven places, slow shades that differ from row to row a little, and grain. */
function faceOf({ spacing, spread, lag, grain, seed }: Laid): { face: FaceStrip; columns: number } {
  const normal = normalOf(random(seed));
  const [places, light] = [[-WIDE], new Float32Array(ROWS * COLUMNS)];
  while (spacing > 0 && places[places.length - 1]! < COLUMNS + WIDE)
    places.push(places[places.length - 1]! + spacing * WIDE * Math.max(0.35, 1 + spread * normal()));
  const shades = Array.from(
    { length: 12 },
    () => [0.04 * normal(), 6 * Math.abs(normal()) + 3, normal()] as const,
  );
  for (let row = 0; row < ROWS; row++) {
    const u = 0.8 * ((2 * row) / (ROWS - 1) - 1);
    for (let x = 0; x < COLUMNS; x++) {
      const slow = shades.reduce(
        (s, [size, turns, at], i) => s + size * Math.sin((turns * x) / COLUMNS + at + i * u),
        0,
      );
      light[row * COLUMNS + x] = 0.5 + slow + grain * normal();
    }
    const tail = (lag * u * u * WIDE) / 2;
    for (const place of places)
      for (let x = Math.ceil(place + tail - 6); x <= place + tail + 6; x++)
        if (x >= 0 && x < COLUMNS)
          light[row * COLUMNS + x]! -= 0.12 * Math.exp(-0.5 * ((x - place - tail) / 1.3) ** 2);
  }
  const inside = places.filter((at) => at >= 0 && at <= COLUMNS);
  const columns = (inside[inside.length - 1]! - inside[0]!) / (inside.length - 1);
  const at = (column: number) => ({ x: column, y: 0 });
  return { face: { rows: ROWS, columns: COLUMNS, light, stepPx: 1, widthColumns: WIDE, at }, columns };
}

const laid = (spacing: fc.Arbitrary<number>) =>
  fc.record({
    spacing,
    spread: fc.double({ min: 0.05, max: 0.25, noNaN: true }),
    lag: fc.double({ min: 0, max: 0.9, noNaN: true }),
    grain: fc.double({ min: 0.005, max: 0.05, noNaN: true }),
    seed: fc.integer({ min: 1, max: 1_000_000 }),
  });
const rippled = (seed: number, count: number): readonly Laid[] =>
  fc.sample(laid(fc.double({ min: 0.13, max: 0.3, noNaN: true })), { seed, numRuns: count });
const bare = (seed: number, count: number): readonly Laid[] =>
  fc.sample(laid(fc.constant(0)), { seed, numRuns: count });

describe("ripples of an unrolled face", () => {
  itDeep("have their spacing read within what is stated, where it is read", () => {
    const asked = rippled(3, 200).map(faceOf);
    const read = asked.flatMap(({ face, columns }) => {
      const found = ripplesOf(face);
      return found ? [{ found, off: COLUMNS / found.count / columns - 1 }] : [];
    });
    expect(read.length).toBeGreaterThan(0.6 * asked.length);
    const within = read.filter(({ found, off }) => Math.abs(off) <= 2 * found.share).length;
    expect(within / read.length).toBeGreaterThanOrEqual(0.93);
    expect(read.every(({ found: { from, to } }) => from.x === 0 && to.x === COLUMNS)).toBe(true);
  });

  itDeep("are none where there are only shades and grain", () => {
    const asked = bare(4, 150).map(faceOf);
    expect(asked.filter(({ face }) => ripplesOf(face) !== null).length).toBeLessThanOrEqual(
      asked.length / 50,
    );
  });

  // As uneven as a hand lays them: a strictly even rhythm stays one, whatever its phases.
  itDeep("are none once each row's waves have phases of their own, though the spectrum stays", () => {
    const asked = rippled(5, 100).map((one) => faceOf({ ...one, spread: 0.2 }).face);
    const read = asked.filter((face) => ripplesOf(face) !== null);
    const still = read.filter((face, i) => ripplesOf(shuffled(face, i)) !== null);
    expect(read.length).toBeGreaterThan(0.6 * asked.length);
    expect(still.length).toBeLessThanOrEqual(read.length / 10);
  });

  it("have the place of a peak between the spacings that were looked at", () => {
    // A parabola in the logarithm with its top at 20.7.
    const looks = Array.from({ length: 30 }, (_, i) => {
      const columns = 8 * 1.08 ** i;
      return { columns, power: -30 * Math.log(columns / 20.7) ** 2, alike: 0.8, steady: 0.8 };
    });
    expect(plainest(looks)!.columns).toBeCloseTo(20.7, 1);
    expect(plainest(looks.map((one, i) => ({ ...one, power: i })))).toBeNull();
  });
});
