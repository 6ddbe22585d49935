import { describe, expect, it } from "vitest";
import { applyHomography, distance } from "@/lib/geometry";
import { calibrate, defaultMeasureOptions, mapPoint } from "@/lib/measure";
import { findStrip } from "@/lib/strip";
import { drawStrip } from "./draw-strip";
import { inDepth } from "../../setup/in-depth";

/** Pictures drawn by the test with known truth. */
const views = {
  "straight on": [
    [60, 200],
    [900, 200],
    [900, 354],
    [60, 354],
  ],
  "turned and tilted": [
    [120, 120],
    [830, 330],
    [760, 480],
    [90, 250],
  ],
  "upside down": [
    [900, 420],
    [60, 400],
    [70, 250],
    [880, 280],
  ],
} as const;
const points = (list: readonly (readonly [number, number])[]) => list.map(([x, y]) => ({ x, y }));

describe("findStrip", () => {
  it.each(Object.entries(views).slice(inDepth(1, 0), inDepth(2, 3)))(
    "finds every corner to a quarter pixel: %s",
    (_, corners) => {
      const { image, map } = drawStrip(960, 540, points(corners));
      const found = findStrip(image);
      if (!found.ok) throw new Error(JSON.stringify(found.issues));
      expect(found.value.corners).toHaveLength(8);
      for (const corner of found.value.corners) {
        const truth = applyHomography(map, { x: corner.xMm, y: corner.yMm });
        expect(distance(corner, truth)).toBeLessThan(0.25);
      }
    },
  );

  it("gives a scale in which the strip is as long as it is", () => {
    const { image, map } = drawStrip(960, 540, points(views["turned and tilted"]));
    const found = findStrip(image);
    if (!found.ok) throw new Error(JSON.stringify(found.issues));
    const scale = {
      kind: "strip" as const,
      printFactor: 1,
      ...found.value,
      corners: [...found.value.corners],
    };
    const calibration = calibrate(scale, defaultMeasureOptions);
    if (!calibration.ok) throw new Error(JSON.stringify(calibration.issues));
    const ends = [0, 120].map((x) => mapPoint(calibration.value.map, applyHomography(map, { x, y: 11 })));
    expect(Math.abs(distance(ends[0]!, ends[1]!) - 120)).toBeLessThan(0.12);
  });

  it("refuses a strip that is cut off by the picture's edge", () => {
    const { image } = drawStrip(
      960,
      540,
      points([
        [400, 200],
        [1240, 200],
        [1240, 354],
        [400, 354],
      ]),
    );
    const found = findStrip(image);
    expect(found.ok ? "found" : found.issues[0]!.code).toBe("strip-cut");
  });

  it("refuses a strip that is too small", () => {
    const { image } = drawStrip(
      960,
      540,
      points([
        [300, 200],
        [540, 200],
        [540, 244],
        [300, 244],
      ]),
    );
    const found = findStrip(image);
    expect(found.ok ? "found" : found.issues[0]!.code).toBe("strip-too-small");
  });

  it("refuses a strip that is bent", () => {
    const bow = (x: number): number => 2.5 * Math.sin((Math.PI * x) / 120) ** 2;
    const { image } = drawStrip(960, 540, points(views["straight on"]), bow);
    const found = findStrip(image);
    expect(found.ok ? "found" : found.issues[0]!.code).toBe("strip-bent");
  });

  it("finds none in a picture without one", () => {
    const data = new Uint8ClampedArray(4 * 320 * 240).fill(128);
    const found = findStrip({ width: 320, height: 240, data });
    expect(found.ok ? "found" : found.issues[0]!.code).toBe("strip-not-found");
  });
});
