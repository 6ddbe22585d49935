import { describe, expect, it } from "vitest";
import { planRun, PlanAskSchema, type PlanAsk } from "@/lib/plan";
import { fillDrawing, filletPasses, groovePasses, type PassOutline } from "@/lib/report/fill-drawing";

/** By Gauss's formula. */
const areaOf = (outline: PassOutline): number =>
  Math.abs(
    outline.reduce((sum, [x, y], i) => {
      const [nextX, nextY] = outline[(i + 1) % outline.length]!;
      return sum + x * nextY - nextX * y;
    }, 0),
  ) / 2;

const drawingOf = (part: Partial<PlanAsk>) => {
  const planned = planRun(PlanAskSchema.parse(part));
  if (!planned.ok) throw new Error(JSON.stringify(planned.issues));
  return { drawing: fillDrawing(planned.value), plan: planned.value };
};
const t1: Partial<PlanAsk> = {
  electrodeClass: "E71T-1C",
  electrodeDiameterMm: 1.2,
  position: "flat",
  thicknessMm: 12,
};

describe("passes drawn", () => {
  it.each([1, 2, 3, 4, 6, 7, 10])("share a fillet of 12 mm in %s equal parts that fill it", (passes) => {
    const outlines = filletPasses(12, passes);
    expect(outlines).toHaveLength(passes);
    for (const outline of outlines) expect(areaOf(outline)).toBeCloseTo(72 / passes, 9);
  });

  it.each([
    [6.35, 45, 4],
    [6.35, 0, 3],
    [3.2, 60, 7],
  ])("share a groove of %s mm root and %s° in %s equal parts that fill it", (rootMm, includedDeg, passes) => {
    const outlines = groovePasses({ rootMm, includedDeg }, 12, passes);
    const whole = 12 * rootMm + 144 * Math.tan((includedDeg * Math.PI) / 360);
    for (const outline of outlines) expect(areaOf(outline)).toBeCloseTo(whole / passes, 9);
    expect(Math.max(...outlines.flat().map(([, y]) => y))).toBeCloseTo(12, 9);
  });

  it("are as many as the plan has, numbered in their order, within their square", () => {
    for (const part of [
      { ...t1, joint: "groove-backed" as const },
      { ...t1, joint: "tee" as const, targetLegMm: 16 },
      { ...t1, joint: "stringer-pad" as const, padWidthMm: 30 },
    ]) {
      const { drawing, plan } = drawingOf(part);
      const passes = plan.gives.find(({ code }) => code === "passes")!.value;
      expect(drawing!.strokes.filter(({ kind }) => kind === "pass")).toHaveLength(passes);
      for (const [x, y] of drawing!.strokes.flatMap(({ points }) => [...points])) {
        expect(Math.min(x, y)).toBeGreaterThanOrEqual(-1e-9);
        expect(Math.max(x, y)).toBeLessThanOrEqual(100);
      }
    }
    expect(drawingOf({ ...t1, joint: "tee" }).drawing).toBeNull();
  });
});
