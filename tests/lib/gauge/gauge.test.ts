import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { GaugeStudySchema, studyFigures, studyStanding, studyTable, studyWords } from "@/lib/gauge";
import { crossedAnova } from "@/lib/gauge/anova";
import { studyComponents } from "@/lib/gauge/components";
import { inDepth } from "../../setup/in-depth";
import { handbook, impedance, normalsFrom, simulated } from "./handbook";

describe("a gauge study against published figures", () => {
  const { anova, components, lines, categories } = studyFigures(handbook);
  const share = (id: string) => lines.find((one) => one.id === id)!.ofStudy! * 100;

  // AIAG, Measurement Systems Analysis, 3rd edition, tables 5 and 6 of the analysis of variance (printed figures from memory).
  it("has AIAG's analysis of variance", () => {
    expect([anova.people, anova.parts, anova.interaction, anova.repeatability, anova.total]).toMatchObject([
      { degrees: 2 },
      { degrees: 9 },
      { degrees: 18 },
      { degrees: 60 },
      { degrees: 89 },
    ]);
    expect(anova.people.sumOfSquares).toBeCloseTo(3.1673, 4);
    expect(anova.parts.sumOfSquares).toBeCloseTo(88.3619, 4);
    expect(anova.interaction.sumOfSquares).toBeCloseTo(0.359, 4);
    expect(anova.repeatability.sumOfSquares).toBeCloseTo(2.7589, 4);
    expect(anova.total.sumOfSquares).toBeCloseTo(94.6471, 4);
    expect(anova.people.meanSquare).toBeCloseTo(1.58363, 5);
    expect(anova.parts.meanSquare).toBeCloseTo(9.81799, 5);
    expect(anova.interaction.meanSquare).toBeCloseTo(0.01994, 5);
    expect(anova.repeatability.meanSquare).toBeCloseTo(0.04598, 5);
    expect(anova.f).toBeCloseTo(0.434, 3);
    expect(anova.p).toBeCloseTo(0.974, 3);
  });

  it("has AIAG's components, shares and categories, the interaction pooled", () => {
    expect(components.pooled).toBe(true);
    expect(components.repeatability.sigma).toBeCloseTo(0.199933, 6);
    expect(components.reproducibility.sigma).toBeCloseTo(0.226838, 6);
    expect(components.gauge.sigma).toBeCloseTo(0.302373, 5);
    expect(components.part.sigma).toBeCloseTo(1.04233, 5);
    expect(components.total.sigma).toBeCloseTo(1.0853, 4);
    expect(share("repeatability")).toBeCloseTo(18.4, 1);
    expect(share("reproducibility")).toBeCloseTo(20.9, 1);
    expect(share("gauge")).toBeCloseTo(27.9, 1);
    expect(share("part")).toBeCloseTo(96, 1);
    expect(categories).toBe(4);
  });

  it("has the mean squares of the thermal impedance, and keeps its interaction apart", () => {
    const found = studyFigures(impedance);
    expect(found.anova.parts.meanSquare).toBeCloseTo(437.33, 2);
    expect(found.anova.people.meanSquare).toBeCloseTo(19.63, 2);
    expect(found.anova.interaction.meanSquare).toBeCloseTo(2.695, 3);
    expect(found.anova.repeatability.meanSquare).toBeCloseTo(0.511, 3);
    expect(found.components.pooled).toBe(false);
    // Montgomery, Introduction to Statistical Quality Control, the same example: 48.29, 0.51 and 0.73 (from memory).
    expect(found.components.part.variance).toBeCloseTo(48.29, 2);
    expect(found.components.repeatability.variance).toBeCloseTo(0.51, 2);
    expect(found.components.interaction.variance).toBeCloseTo(0.73, 2);
  });
});

const size = fc.integer({ min: 2, max: 4 });
const valuesOf = fc.tuple(size, size, size).chain(([people, parts, tries]) => {
  const list = <T>(of: fc.Arbitrary<T>, length: number) =>
    fc.array(of, { minLength: length, maxLength: length });
  const value = fc.integer({ min: -200, max: 2000 }).map((step) => step / 100);
  return list(list(list(value, tries), parts), people);
});
const runs = { numRuns: inDepth(100, 3000), seed: 18 };

describe("laws of a gauge study", () => {
  it("sums of squares and degrees add up to the whole", () => {
    fc.assert(
      fc.property(valuesOf, (values) => {
        const { people, parts, interaction, repeatability, total } = crossedAnova(values);
        const all = [people, parts, interaction, repeatability];
        const sum = all.reduce((found, { sumOfSquares }) => found + sumOfSquares, 0);
        expect(sum).toBeCloseTo(total.sumOfSquares, 6);
        expect(all.reduce((found, { degrees }) => found + degrees, 0)).toBe(total.degrees);
      }),
      runs,
    );
  });

  it("asks neither who is first, nor which part, nor which try", () => {
    fc.assert(
      fc.property(valuesOf, (values) => {
        const plain = studyComponents(crossedAnova(values));
        const turned = values.toReversed().map((own) => own.toReversed().map((tries) => tries.toReversed()));
        const other = studyComponents(crossedAnova(turned));
        for (const id of ["repeatability", "reproducibility", "gauge", "part", "total"] as const)
          expect(other[id].variance).toBeCloseTo(plain[id].variance, 6);
        expect(other.pooled).toBe(plain.pooled);
      }),
      runs,
    );
  });

  it("ten times the readings are ten times every spread, and a shift of all is none", () => {
    fc.assert(
      fc.property(valuesOf, fc.integer({ min: 2, max: 12 }), (values, k) => {
        const plain = studyComponents(crossedAnova(values));
        const scaled = studyComponents(
          crossedAnova(values.map((own) => own.map((tries) => tries.map((value) => k * value + 3)))),
        );
        // What rounding leaves of a variance near nought is the root of it in a spread.
        for (const id of ["repeatability", "gauge", "part", "total"] as const)
          expect(Math.abs(scaled[id].variance - k * k * plain[id].variance)).toBeLessThan(
            1e-9 * (1 + k * k * plain.total.variance),
          );
        if (plain.gaugeDegrees !== null) expect(scaled.gaugeDegrees).toBeCloseTo(plain.gaugeDegrees, 5);
      }),
      runs,
    );
  });

  it("its intervals hold its estimates, and its parts add up", () => {
    fc.assert(
      fc.property(valuesOf, (values) => {
        const found = studyComponents(crossedAnova(values));
        for (const { sigma, bounds } of [found.repeatability, found.part])
          expect(bounds!.low <= sigma + 1e-9 && sigma <= bounds!.high + 1e-9).toBe(true);
        // A component that was put to nought raises the sum above the interval's middle, never below its low end.
        expect(found.gauge.bounds!.low).toBeLessThanOrEqual(found.gauge.sigma + 1e-9);
        expect(found.gauge.variance).toBeCloseTo(
          found.repeatability.variance + found.people.variance + found.interaction.variance,
          9,
        );
        expect(found.total.variance).toBeCloseTo(found.gauge.variance + found.part.variance, 9);
      }),
      runs,
    );
  });

  it("says nought of readings that are all alike, and tells parts apart that alone differ", () => {
    const alike = studyFigures({
      ...handbook,
      values: handbook.values.map((own) => own.map(() => [5.1, 5.1, 5.1])),
    });
    expect(alike.lines.every(({ sigma, ofStudy }) => sigma === 0 && ofStudy === null)).toBe(true);
    expect([alike.categories, alike.reading, studyStanding(alike)]).toEqual([null, null, "no-spread"]);
    const values = handbook.values.map((own) => own.map((_, j) => [j * 0.1, j * 0.1, j * 0.1]));
    const apart = studyFigures({ ...handbook, values });
    expect(apart.components.gauge.sigma).toBe(0);
    expect(apart.components.part.sigma).toBeGreaterThan(0.2);
    expect(studyWords(handbook, apart).join(" ")).toContain("step of the gauge");
  });
});

describe("a simulated gauge", () => {
  const sizes = { people: 4, parts: 8, tries: 3 };
  const sigmas = { repeat: 0.2, person: 0.25, cross: 0.15, part: 1 };
  const normal = normalsFrom(1971);
  const studies = Array.from({ length: inDepth(600, 6000) }, () =>
    studyComponents(crossedAnova(simulated(sizes, sigmas, normal))),
  );
  const mean = (of: (one: (typeof studies)[number]) => number) =>
    studies.reduce((sum, one) => sum + of(one), 0) / studies.length;

  it("gives back its components in the mean", () => {
    // Pooling and what is put to nought leave a little bias; a part or person left out would be a fifth and more.
    expect(mean(({ repeatability }) => repeatability.variance) / 0.04).toBeCloseTo(1, 1);
    expect(mean(({ gauge }) => gauge.variance) / (0.04 + 0.0625 + 0.0225)).toBeGreaterThan(0.93);
    expect(mean(({ gauge }) => gauge.variance) / (0.04 + 0.0625 + 0.0225)).toBeLessThan(1.07);
    expect(Math.abs(mean(({ part }) => part.variance) - 1)).toBeLessThan(0.08);
  });

  it("lies in its intervals about 95 times in a hundred", () => {
    const holds = (id: "gauge" | "part" | "repeatability", truth: number) =>
      mean((one) => Number(one[id].bounds!.low <= truth && truth <= one[id].bounds!.high));
    // Four standard errors of a share of 600.
    expect(Math.abs(holds("gauge", Math.sqrt(0.125)) - 0.95)).toBeLessThan(0.036);
    expect(Math.abs(holds("part", 1) - 0.95)).toBeLessThan(0.036);
  });

  it("carries an uncertainty that holds a further person's reading about 95 times in a hundred", () => {
    const more = normalsFrom(42);
    let held = 0;
    const rounds = inDepth(1500, 10_000);
    for (let i = 0; i < rounds; i++) {
      const values = simulated(sizes, { ...sigmas, cross: 0 }, more);
      const { reading } = studyFigures({ ...handbook, values });
      const error = 0.25 * more() + 0.2 * more();
      held += Number(Math.abs(error) <= reading!.k * reading!.u);
    }
    expect(held / rounds).toBeGreaterThan(0.93);
    expect(held / rounds).toBeLessThan(0.985);
  });
});

describe("what a study says", () => {
  it("is silent for readings where it is too small, and says so", () => {
    const small = { ...handbook, parts: ["1", "2"], values: handbook.values.map((own) => own.slice(0, 2)) };
    expect(studyFigures(small).reading).toBeNull();
    expect(studyWords(small, studyFigures(small)).at(-1)).toContain("does not count for readings");
    const { reading } = studyFigures(handbook);
    // 5.918 effective degrees: t = 2.455 (between the tables' 2.571 at 5 and 2.447 at 6).
    expect(reading).toMatchObject({ on: "2026-11-20" });
    expect(reading!.k).toBeGreaterThan(2.447);
    expect(reading!.k).toBeLessThan(2.571);
  });

  it("compares with the tolerance where there is one, and stands by AIAG's borders", () => {
    const of = (tolerance: number | null) => studyStanding(studyFigures({ ...handbook, tolerance }));
    expect([of(null), of(6), of(18), of(19)]).toEqual(["may-do", "poor", "may-do", "good"]);
    expect(
      studyWords({ ...handbook, tolerance: 6 }, studyFigures({ ...handbook, tolerance: 6 })).join(" "),
    ).toContain("30 % of the tolerance of 6 mm");
  });

  it("puts every reading and every component into its table", () => {
    const table = studyTable(handbook, studyFigures(handbook));
    expect(table).toHaveLength(1 + 90 + 1 + 1 + 5);
    expect(table[1]).toEqual(["A", "1", 1, 0.29]);
    expect(table[90]).toEqual(["C", "10", 3, -2.16]);
  });

  it("takes no study with a gap, a person twice or a size beyond its sheet", () => {
    expect(GaugeStudySchema.safeParse(handbook).success).toBe(true);
    const gap = handbook.values.map((own, i) => (i === 1 ? own.slice(1) : own));
    const short = handbook.values.map((own) => own.map((tries, j) => (j === 3 ? tries.slice(1) : tries)));
    for (const wrong of [{ values: gap }, { values: short }, { people: ["A", "A", "C"] }, { parts: ["1"] }])
      expect(GaugeStudySchema.safeParse({ ...handbook, ...wrong }).success).toBe(false);
  });
});
