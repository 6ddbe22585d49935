import { describe, expect, it } from "vitest";
import { budgetLines, calibrate, defaultMeasureOptions, gaugeQuantity, statedQuantity } from "@/lib/measure";
import { budgetParts } from "@/lib/measure/types";
import { budgetSentences } from "@/lib/measure/budget";
import { measureLength } from "@/lib/measure/figures";

/** 20 photo px per mm, invented. */
const scales = {
  "two-points": {
    kind: "two-points",
    a: { x: 300, y: 900 },
    b: { x: 2300, y: 900 },
    lengthMm: 100,
  },
  rectangle: {
    kind: "rectangle",
    corners: [
      { x: 300, y: 900 },
      { x: 2012, y: 910 },
      { x: 2020, y: 1990 },
      { x: 290, y: 1970 },
    ],
    widthMm: 85.6,
    heightMm: 53.98,
  },
  disc: {
    kind: "disc",
    rim: [0, 1, 2, 3, 4, 5, 6, 7].map((i) => ({
      x: 900 + 250 * Math.cos((i * Math.PI) / 4),
      y: 1300 + 230 * Math.sin((i * Math.PI) / 4),
    })),
    diameterMm: 25,
  },
} as const;

function lengthOn(kind: keyof typeof scales) {
  const calibration = calibrate(structuredClone(scales[kind]) as never, {
    ...defaultMeasureOptions,
    photo: { widthPx: 4000, heightPx: 3000 },
  });
  if (!calibration.ok) throw new Error(calibration.issues[0]!.code);
  return measureLength(calibration.value, [
    { x: 1000, y: 500 },
    { x: 1300, y: 620 },
  ]);
}

describe("the parts of a figure's uncertainty", () => {
  it.each([
    ["two-points", ["picks", "scale-picks", "scale-length", "tilt", "height", "lens"]],
    ["rectangle", ["picks", "scale-picks", "scale-length", "height", "lens"]],
    ["disc", ["picks", "scale-picks", "scale-length", "tilt", "near-side", "height", "lens"]],
  ] as const)("on a %s are named, largest first, and add to the whole", (kind, parts) => {
    const length = lengthOn(kind);
    const lines = budgetLines(length);
    expect(lines.map(({ part }) => part).sort()).toEqual([...parts].sort());
    expect(lines.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
    lines.slice(1).forEach(({ u }, i) => expect(u).toBeLessThanOrEqual(lines[i]!.u));
    if (kind !== "disc")
      expect(2 * Math.hypot(...lines.map(({ u }) => u))).toBeCloseTo(length.expandedUncertainty, 12);
  });

  it("of a gauge reading are its resolution, of a stated size none", () => {
    const gauge = gaugeQuantity({ valueMm: 1.2, resolutionMm: 0.1, instrument: "undercut gauge" });
    expect(budgetLines(gauge).map(({ part, share }) => [part, share])).toEqual([["resolution", 1]]);
    expect(budgetLines(statedQuantity(8))).toEqual([]);
  });

  it("each have a sentence", () => {
    expect(Object.keys(budgetSentences).sort()).toEqual([...budgetParts].sort());
    for (const sentence of Object.values(budgetSentences)) expect(sentence).toMatch(/^[A-Z].*\.$/);
  });
});
