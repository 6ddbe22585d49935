import { describe, expect, it } from "vitest";
import { renderTruth, scenarioNames } from "@/demo-images";
import { drawPoreDiameter } from "@/demo-images/imperfections/pore";
import { drawSpatterDiameter } from "@/demo-images/imperfections/spatter";
import { createRandom } from "@/demo-images/noise/random";

/* LoHi-WELD (Block et al., IEEE Access 2024): on beads of 60 mm a pore's median width is about 1.2 mm, a spatter
   deposit's about 1.4 mm, and a quarter of the images show pores. */

const median = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[values.length >> 1]!;

describe("defaults lie around the published sizes of real beads", () => {
  const random = createRandom(11);
  const pores = Array.from({ length: 4000 }, () => drawPoreDiameter(random));
  const balls = Array.from({ length: 4000 }, () => drawSpatterDiameter(random));

  it("pores near 1.2 mm", () => {
    expect(median(pores)).toBeGreaterThan(1.1);
    expect(median(pores)).toBeLessThan(1.3);
  });

  it("spatter near 1.4 mm in its coarser half, and balls from 0.3 to 3 mm", () => {
    // Their camera resolves no fine spatter, ours is drawn down to 0.3 mm: the coarser half is what compares.
    const coarse = balls.filter((d) => d > median(balls));
    expect(median(coarse)).toBeGreaterThan(1.2);
    expect(median(coarse)).toBeLessThan(1.6);
    expect(Math.min(...balls)).toBeGreaterThanOrEqual(0.3);
    expect(Math.max(...balls)).toBeLessThanOrEqual(3);
  });
});

describe("the scenarios together", () => {
  const truths = scenarioNames.map((scenario) => renderTruth({ megapixels: 0.1, scenario, seed: 7 }));
  const diameters = (kind: string): number[] =>
    truths.flatMap(({ imperfections }) =>
      imperfections.filter((mark) => mark.kind === kind).map((mark) => mark.sizes.diameterMm!),
    );

  it("show pores in about a quarter of the pictures, near the published width", () => {
    const porous = truths.filter((t) => t.imperfections.some((mark) => mark.kind === "surface-porosity"));
    expect(porous.length / truths.length).toBeGreaterThan(0.15);
    expect(porous.length / truths.length).toBeLessThan(0.35);
    expect(median(diameters("surface-porosity"))).toBeGreaterThan(0.8);
    expect(median(diameters("surface-porosity"))).toBeLessThan(1.6);
  });

  it("show spatter whose coarser half is near the published width", () => {
    const all = diameters("spatter");
    const coarse = all.filter((d) => d > median(all));
    expect(median(coarse)).toBeGreaterThan(0.9);
    expect(median(coarse)).toBeLessThan(1.9);
  });
});
