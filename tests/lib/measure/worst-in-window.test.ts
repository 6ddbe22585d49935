import { describe, expect, it } from "vitest";
import { measureCase, MeasureCaseSchema } from "@/lib/measure";

/** 20 px to the millimetre; invented. */
const at = (xMm: number, yMm = 0) => ({ x: 20 * xMm, y: 20 * yMm });
const pores: readonly (readonly [number, number])[] = [
  [5, 2],
  [12, 1.5],
  [28, 3],
  [33, 1],
  [52, 2.5],
  [57, 2],
  [60, 1],
];
const undercuts: readonly (readonly [number, number])[] = [
  [0, 12],
  [20, 45],
  [70, 90],
];
const written = {
  drawing: {
    scale: { kind: "two-points", a: at(0), b: at(100), lengthMm: 100 },
    weldLine: [at(0, 2), at(120, 2)],
    marks: [
      ...pores.map(([x, diameter], i) => ({
        id: `p${i}`,
        imperfection: "surface-porosity",
        shape: { kind: "point", at: at(x, 2), radius: 10 * diameter },
      })),
      ...undercuts.map(([from, to], i) => ({
        id: `u${i}`,
        imperfection: "undercut",
        shape: { kind: "line", points: [at(from), at(to)] },
      })),
    ],
  },
  windows: [
    { imperfections: ["surface-porosity"], of: "diameter", windowMm: 25 },
    { imperfections: ["surface-porosity"], of: "count", windowMm: 30 },
    { imperfections: ["undercut"], of: "length", windowMm: 50 },
  ],
};

describe("worstInWindow, through the measuring door", () => {
  it("finds the stretches that sums by hand over every window find", () => {
    const { windows } = measureCase(MeasureCaseSchema.parse(written));
    const sumFrom = (start: number) =>
      pores.filter(([x]) => x >= start && x <= start + 25).reduce((sum, [, d]) => sum + d, 0);
    const lengthFrom = (start: number) =>
      undercuts.reduce((sum, [a, b]) => sum + Math.max(0, Math.min(b, start + 50) - Math.max(a, start)), 0);
    const starts = Array.from({ length: 1700 }, (_, i) => -50 + i / 10);
    expect(windows[0]!.worst).toBeCloseTo(Math.max(...pores.map(([x]) => sumFrom(x))), 9);
    expect(windows[1]!.worst).toBe(4);
    expect(windows[2]!.worst).toBeCloseTo(Math.max(...starts.map(lengthFrom)), 9);
    expect(windows[0]!.leastSpacingMm).toBeCloseTo(3, 9);
  });

  it("is null, not nought, where places are not known", () => {
    const { drawing, windows } = written;
    const bare = measureCase(
      MeasureCaseSchema.parse({ drawing: { ...drawing, weldLine: null }, windows: windows.slice(0, 1) }),
    );
    expect(bare.windows[0]).toMatchObject({ worst: null, leastSpacingMm: null });
  });

  it("reads toes and ripples where they are picked", () => {
    const xs = [-40, -20, 0, 20, 40];
    const report = measureCase(
      MeasureCaseSchema.parse({
        ...written,
        toes: [xs.map((x) => at(x)), xs.map((x) => at(x, 8))],
        ripples: [0, 2, 4, 6, 8].map((x) => at(x, 4)),
        options: { pickSigmaPx: 0 },
      }),
    );
    expect(report.toes!.width.value).toBeCloseTo(8, 9);
    expect(report.toes!.straightness[0].value).toBeCloseTo(0, 9);
    expect(report.ripples!.spacing.value).toBeCloseTo(2, 9);
    expect(report.ripples!.irregularity).toBeCloseTo(0, 9);
  });
});
