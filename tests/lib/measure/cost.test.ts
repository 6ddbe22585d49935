import { expect, it } from "vitest";
import type { Point } from "@/lib/geometry";
import { emptyDrawing, MarkSchema, type Mark, type Scale } from "@/lib/marks";
import { calibrate, defaultMeasureOptions, measureDrawing } from "@/lib/measure";

const scale: Scale = { kind: "two-points", a: { x: 100, y: 100 }, b: { x: 1100, y: 100 }, lengthMm: 100 };
const calibration = calibrate(scale, { ...defaultMeasureOptions, photo: { widthPx: 4000, heightPx: 3000 } });
const weldLine = Array.from({ length: 200 }, (_, i) => ({ x: 20 * i, y: 1500 }));

/** A round outline: every point lies on its hull, so none can be left aside. */
const round = (count: number): Point<"photo">[] =>
  Array.from({ length: count }, (_, i) => ({
    x: 2000 + 300 * Math.cos((2 * Math.PI * i) / count),
    y: 1500 + 300 * Math.sin((2 * Math.PI * i) / count),
  }));

const outline = (count: number): Mark =>
  MarkSchema.parse({
    id: "one",
    imperfection: "gas-mark",
    shape: { kind: "outline", points: round(count) },
    place: null,
    stretch: null,
    patterns: [],
    gauge: [],
    note: "",
  });

/** The least time of the processor of some runs taken in turn: what else the machine does is not in it. */
function leastMs(works: readonly (() => unknown)[], rounds: number): number[] {
  const least = works.map(() => Infinity);
  for (let round = 0; round < rounds; round += 1)
    works.forEach((work, i) => {
      const from = process.cpuUsage();
      work();
      const { user, system } = process.cpuUsage(from);
      least[i] = Math.min(least[i]!, (user + system) / 1000);
    });
  return least;
}

it("measuring an outline of 500 points costs as much as a few passes over all pairs of its points", () => {
  const measured = (count: number) => {
    const mark = outline(count);
    // Another mark each time: what was measured is remembered, and asking for it again costs nothing.
    return () => measureDrawing({ ...emptyDrawing, scale, weldLine, marks: [{ ...mark }] }, calibration);
  };
  /** Every pair of the same 500 points, compared once. */
  const ring = round(500);
  const allPairs = () => {
    let sum = 0;
    for (const a of ring) for (const b of ring) sum += Math.hypot(a.x - b.x, a.y - b.y);
    return sum;
  };
  const [whole, quarter, pairs] = leastMs([measured(500), measured(125), allPairs], 12);
  console.log(
    `500 points ${whole!.toFixed(1)} ms, 125 points ${quarter!.toFixed(1)} ms, all pairs ${pairs!.toFixed(1)} ms`,
  );
  expect(whole! / pairs!).toBeLessThan(40);
  // Four times the points: sixteen times where it grows with the square, 64 with the cube.
  expect(whole! / quarter!).toBeLessThan(24);
});

it("is the figure it always was: the circle's by the closed form", () => {
  const [mark] = measureDrawing({ ...emptyDrawing, scale, marks: [outline(500)] }, calibration);
  // 10 px a millimetre, so 30 mm of radius; the polygon's area is n/2 r^2 sin(2 pi / n).
  expect(mark!.lengthMm!.value).toBeCloseTo(60, 6);
  expect(mark!.areaMm2!.value).toBeCloseTo(250 * 900 * Math.sin((2 * Math.PI) / 500), 6);
});
