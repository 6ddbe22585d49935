import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cohenKappa, fleissKappa } from "@/lib/numeric";
import { inDepth } from "../../setup/in-depth";

/**
 * Fleiss 1971, Psychological Bulletin 76, table 1: thirty patients, six psychiatrists each, five diagnoses. The rows are from
 * memory; their column sums are the paper's own (26, 26, 30, 55, 43), as is the kappa of 0.430.
 */
const fleiss1971 = `00060 03003 01401 00006 03030 20400 00402 20310 20040 00006 10050 11040 03300 10050 02031
00501 30012 51000 02040 10203 00006 01050 02013 20040 10041 05010 40002 02040 10500 00006`
  .split(/\s+/)
  .map((row) => [...row].map(Number));

describe("Fleiss' kappa", () => {
  it("is 0.430 for Fleiss 1971, observed 0.556 and by chance 0.220", () => {
    const sums = [0, 1, 2, 3, 4].map((j) => fleiss1971.reduce((sum, row) => sum + (row[j] ?? 0), 0));
    expect(sums).toEqual([26, 26, 30, 55, 43]);
    const kappa = fleissKappa(fleiss1971);
    expect(kappa.value).toBeCloseTo(0.43, 3);
    expect(kappa.observed).toBeCloseTo(0.556, 3);
    expect(kappa.expected).toBeCloseTo(0.22, 3);
    expect(kappa.low!).toBeLessThan(0.43);
    expect(kappa.high!).toBeGreaterThan(0.43);
  });

  it("says nothing where it cannot: one answer only, one person, unequal rows, nothing", () => {
    for (const counts of [
      [
        [3, 0],
        [3, 0],
        [3, 0],
      ],
      [
        [1, 0],
        [0, 1],
      ],
      [
        [2, 0],
        [1, 0],
      ],
      [],
    ])
      expect(fleissKappa(counts).value).toBeNull();
  });

  it("its interval holds the truth in about 95 of 100 studies of 60 beads by three people", () => {
    // Each calls a bead right with 0.85, half of all beads bad: agreement 0.85² + 0.15², by chance 0.5.
    const truth = (0.85 ** 2 + 0.15 ** 2 - 0.5) / 0.5;
    let state = 5;
    const chance = () => (state = (state * 48271) % 2147483647) / 2147483647;
    const studies = inDepth(300, 3000);
    let held = 0;
    for (let study = 0; study < studies; study++) {
      const counts = Array.from({ length: 60 }, () => {
        const isBad = chance() < 0.5;
        const bad = [0, 1, 2].filter(() => chance() < 0.85 === isBad).length;
        return [bad, 3 - bad];
      });
      const { low, high } = fleissKappa(counts);
      held += Number(low! <= truth && truth <= high!);
    }
    expect(held / studies).toBeGreaterThan(0.91);
    expect(held / studies).toBeLessThan(0.985);
  });

  it("law: of two people it is near Cohen's and never above it (Scott's chance is never the smaller one)", () => {
    const cell = fc.integer({ min: 0, max: 12 });
    fc.assert(
      fc.property(fc.array(cell, { minLength: 9, maxLength: 9 }), (cells) => {
        const table = [cells.slice(0, 3), cells.slice(3, 6), cells.slice(6)];
        const counts = table.flatMap((row, i) =>
          row.flatMap((count, j) =>
            Array.from({ length: count }, () => [0, 1, 2].map((k) => Number(k === i) + Number(k === j))),
          ),
        );
        const [fleiss, cohen] = [fleissKappa(counts), cohenKappa(table)];
        if (fleiss.value === null || cohen.value === null) return;
        expect(fleiss.observed).toBeCloseTo(cohen.observed, 10);
        expect(fleiss.value).toBeLessThanOrEqual(cohen.value + 1e-12);
        if (fleiss.low !== null && fleiss.high !== null)
          expect(fleiss.low <= fleiss.value + 1e-12 && fleiss.value <= fleiss.high + 1e-12).toBe(true);
      }),
      { numRuns: inDepth(100, 2000), seed: 18 },
    );
  });
});

describe("Cohen's kappa", () => {
  /** Cohen 1960, table 1: two clinicians, three diagnoses, 200 patients (from memory): observed 0.70, chance 0.41, kappa 0.492. */
  it("is 0.492 for Cohen 1960", () => {
    const kappa = cohenKappa([
      [88, 14, 18],
      [10, 40, 10],
      [2, 6, 12],
    ]);
    expect(kappa.observed).toBeCloseTo(0.7, 10);
    expect(kappa.expected).toBeCloseTo(0.41, 10);
    expect(kappa.value).toBeCloseTo(0.29 / 0.59, 10);
    expect(kappa.value!.toFixed(3)).toBe("0.492");
  });

  /**
   * AIAG, Measurement Systems Analysis, the attribute example (50 parts, three appraisers, three trials): cross tables of
   * appraisers with each other and with the reference, and the kappas it prints. From memory.
   */
  it.each([
    ["A with B", [44, 6, 3, 97], 0.86],
    ["B with C", [42, 5, 9, 94], 0.79],
    ["A with C", [43, 7, 8, 92], 0.78],
    ["A with the reference", [45, 5, 3, 97], 0.88],
    ["B with the reference", [45, 2, 3, 100], 0.92],
    ["C with the reference", [42, 9, 6, 93], 0.77],
  ])("%s", (_, [a = 0, b = 0, c = 0, d = 0], printed) => {
    expect(
      cohenKappa([
        [a, b],
        [c, d],
      ]).value,
    ).toBeCloseTo(printed, 2);
  });

  /** Fleiss, Statistical Methods for Rates and Proportions, 2nd edition, table 13.1: kappa 0.676, error 0.088 (from memory). */
  it("has the error that Fleiss prints of his hundred patients", () => {
    const kappa = cohenKappa([
      [75, 1, 4],
      [5, 4, 1],
      [0, 0, 10],
    ]);
    expect(kappa.value).toBeCloseTo(0.676, 3);
    expect((kappa.high! - kappa.value!) / 1.959964).toBeCloseTo(0.088, 3);
  });

  it("law: its error is that of the delta method, worked out by changing each cell a little", () => {
    const cell = fc.integer({ min: 1, max: 30 });
    fc.assert(
      fc.property(fc.array(cell, { minLength: 9, maxLength: 9 }), (cells) => {
        const n = cells.reduce((sum, count) => sum + count, 0);
        const of = (counts: readonly number[]) =>
          cohenKappa([counts.slice(0, 3), counts.slice(3, 6), counts.slice(6)]);
        const slopes = cells.map((_, at) => {
          const moved = (by: number) => of(cells.map((count, i) => (i === at ? count + by : count))).value!;
          return (n * (moved(1e-4) - moved(-1e-4))) / 2e-4;
        });
        // Counts are multinomial: the variance of a smooth function of them, to first order.
        const mean = (power: number) =>
          cells.reduce((sum, count, i) => sum + (count / n) * slopes[i]! ** power, 0);
        const error = Math.sqrt((mean(2) - mean(1) ** 2) / n);
        const { value, low, high } = of(cells);
        if (high! < 1) expect((high! - value!) / 1.959964).toBeCloseTo(error, 5);
        if (low! > -1) expect((value! - low!) / 1.959964).toBeCloseTo(error, 5);
      }),
      { numRuns: inDepth(60, 1000), seed: 18 },
    );
  });

  it("law: it does not ask who is first, lies within its interval, and is 1 exactly where all agree", () => {
    const cell = fc.integer({ min: 0, max: 30 });
    fc.assert(
      fc.property(cell, cell, cell, cell, (a, b, c, d) => {
        const one = cohenKappa([
          [a, b],
          [c, d],
        ]);
        const other = cohenKappa([
          [a, c],
          [b, d],
        ]);
        if (one.value === null) return expect(other.value).toBeNull();
        expect(one.value).toBeCloseTo(other.value!, 10);
        expect(one.low! <= one.value + 1e-12 && one.value <= one.high! + 1e-12).toBe(true);
        expect(Math.abs(one.value - 1) < 1e-12).toBe(b + c === 0);
        return undefined;
      }),
      { numRuns: inDepth(100, 2000), seed: 18 },
    );
  });

  it("its interval holds the truth in about 95 of 100 studies of 120 beads", () => {
    // Two people who each call a bead right with 0.85, half of all beads bad: chance 0.5, agreement 0.85² + 0.15².
    const truth = (0.85 ** 2 + 0.15 ** 2 - 0.5) / 0.5;
    let state = 7;
    const chance = () => (state = (state * 48271) % 2147483647) / 2147483647;
    const studies = inDepth(400, 4000);
    let held = 0;
    for (let study = 0; study < studies; study += 1) {
      const table = [
        [0, 0],
        [0, 0],
      ];
      for (let bead = 0; bead < 120; bead += 1) {
        const bad = chance() < 0.5 ? 1 : 0;
        const said = () => (chance() < 0.85 ? bad : 1 - bad);
        table[said()]![said()]! += 1;
      }
      const { low, high } = cohenKappa(table);
      if (low! <= truth && truth <= high!) held += 1;
    }
    // 0.95 with four standard deviations of so many studies.
    const slack = 4 * Math.sqrt((0.95 * 0.05) / studies);
    expect(held / studies).toBeGreaterThan(0.95 - slack - 0.01);
    expect(held / studies).toBeLessThan(0.95 + slack);
  });
});
