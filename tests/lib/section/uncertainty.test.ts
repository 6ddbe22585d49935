import { describe, expect, it } from "vitest";
import { calibrate, defaultMeasureOptions } from "@/lib/measure";
import { measureSection, sectionFigureIds, type SectionDrawing } from "@/lib/section";
import { macroTruthOf } from "@/demo-images";
import type { Point } from "@/lib/geometry";
import { chance, normal } from "../measure/camera";
import { calibration, exact, scale } from "./known-shapes";
import { drawSection } from "./rendered/study";

/** Half of U is the scatter that a thousand hands would have (JCGM 101, propagation of distributions). */
describe("the uncertainty of a section's figures", () => {
  const truth = macroTruthOf({
    scenario: "section-tee-skew-legs",
    seed: 2,
    megapixels: 2,
    tiltDeg: 0,
    rollDeg: 0,
    distortion: 0,
  });
  const random = chance(101);
  const steady = drawSection(truth, (at) => at, random);
  const sigma = 3;
  const shaken = (point: Point) => ({
    x: point.x + sigma * normal(random),
    y: point.y + sigma * normal(random),
  });
  const hand = (): SectionDrawing => ({
    ...steady,
    outline: steady.outline!.map(shaken),
    edges: steady.edges.map((edge) => ({ ...edge, points: edge.points.map(shaken) })),
    root: shaken(steady.root!),
  });
  const draws = Array.from({ length: 1000 }, () => measureSection(hand(), calibration).figures);
  // The scale is held still here: its share is that of lib/measure, and tested there.
  const stated = measureSection(steady, calibrate(scale, { ...exact, pickSigmaPx: sigma })).figures;

  it.each(sectionFigureIds.filter((id) => stated[id] !== null && id !== "concavity"))("%s", (id) => {
    const values = draws.map((one) => one[id]!.value);
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const scatter = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length);
    const half = stated[id]!.budget.find(({ part }) => part === "picks")!.u;
    // A thousand draws give the scatter to 2 %; what is the least or greatest of many is held on the safe side.
    const chosen = /throat|convexity|least|greatest/.test(id);
    expect(half / scatter, id).toBeGreaterThan(0.9);
    expect(half / scatter, id).toBeLessThan(chosen ? 1.6 : 1.1);
  });

  it("puts right what the choice among unsteady picks does: the least is raised, the greatest lowered", () => {
    const plain = measureSection(steady, calibration).figures;
    const least = ["throat", "throat-with-penetration"] as const;
    const greatest = ["convexity", "fusion-1-greatest", "fusion-2-greatest"] as const;
    for (const id of [...least, ...greatest, "fusion-1-least", "fusion-2-least"] as const) {
      const raised = stated[id]!.value - plain[id]!.value;
      const up = (greatest as readonly string[]).includes(id) ? -1 : 1;
      expect(raised * up, id).toBeGreaterThan(0);
      expect(raised * up, id).toBeLessThan(2 * stated[id]!.expandedUncertainty);
    }
    // Here the nearer toe alone ends the inscribed triangle.
    expect(stated["nominal-throat"]!.value).toBeCloseTo(plain["nominal-throat"]!.value, 6);
    // A figure that is no choice stays where it is.
    expect(stated["leg-1"]!.value).toBe(plain["leg-1"]!.value);
    expect(stated["weld-area"]!.value).toBe(plain["weld-area"]!.value);
  });

  it("is shared: a scale that is 2 % long makes every length 2 % long, and dilution no more uncertain", () => {
    const loose = { ...exact, statedLengthRelativeU: 0.02 };
    const { figures } = measureSection(steady, calibrate(scale, loose));
    expect(figures["leg-1"]!.expandedUncertainty / figures["leg-1"]!.value).toBeCloseTo(0.04, 9);
    expect(figures.throat!.expandedUncertainty / figures.throat!.value).toBeCloseTo(0.04, 9);
    expect(figures["weld-area"]!.expandedUncertainty / figures["weld-area"]!.value).toBeCloseTo(0.08, 9);
    expect(figures.dilution!.expandedUncertainty).toBeCloseTo(0, 9);
    expect(figures["leg-difference"]!.expandedUncertainty / figures["leg-difference"]!.value).toBeCloseTo(
      0.04,
      9,
    );
  });

  it("names where it comes from", () => {
    const { figures } = measureSection(steady, calibrate(scale, defaultMeasureOptions));
    expect(figures.throat!.budget.map(({ part }) => part)).toEqual([
      "picks",
      "scale-picks",
      "scale-length",
      "tilt",
      "height",
      "lens",
    ]);
    expect(figures.throat!.source).toBe("photo");
  });
});
