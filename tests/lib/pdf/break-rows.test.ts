import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { breakRows, KEEP_ROWS, startHeight } from "@/lib/pdf/break-rows";
import { foldClauses } from "@/lib/pdf/fold-clauses";

const sum = (all: readonly number[]): number => all.reduce((total, one) => total + one, 0);
const PAGE = 600;
/** Rows of which six stand on any page, as tables of words have them. */
const heights = fc.array(fc.integer({ min: 12, max: 90 }), { minLength: 1, maxLength: 60 });

describe("rows on pages", () => {
  it("are all there once, fit, and neither begin nor end with fewer than three", () => {
    fc.assert(
      fc.property(heights, fc.integer({ min: 0, max: PAGE }), (rows, first) => {
        const counts = breakRows(rows, first, PAGE);
        expect(sum(counts)).toBe(rows.length);
        let at = 0;
        for (const [page, count] of counts.entries()) {
          expect(sum(rows.slice(at, at + count))).toBeLessThanOrEqual(page === 0 ? first : PAGE);
          at += count;
        }
        const shown = counts.filter((count) => count > 0);
        if (shown.length < 2) return;
        expect(shown[0]).toBeGreaterThanOrEqual(KEEP_ROWS);
        expect(shown.at(-1)).toBeGreaterThanOrEqual(KEEP_ROWS);
      }),
      { seed: 7, numRuns: 400 },
    );
  });

  it("begin on this page where a heading was given as much room as the table wants", () => {
    fc.assert(
      fc.property(heights, (rows) => {
        expect(breakRows(rows, startHeight(rows, PAGE), PAGE)[0]).toBeGreaterThan(0);
      }),
      { seed: 11, numRuns: 400 },
    );
  });

  it("that are higher than a page stand alone and are not lost", () => {
    expect(breakRows([900, 900], 100, PAGE)).toEqual([0, 1, 1]);
    expect(breakRows([900], PAGE, PAGE)).toEqual([1]);
    expect(breakRows([], 100, PAGE)).toEqual([]);
  });
});

describe("references that share a table", () => {
  it("name it once", () => {
    expect(foldClauses("Table 1, 1.7; Table 1, 1.10; 7.24; Table 7.8, (1)")).toBe(
      "Table 1: 1.7, 1.10; 7.24; Table 7.8, (1)",
    );
    expect(foldClauses("7.24")).toBe("7.24");
    expect(foldClauses("Table 1; Table 1, 1.7")).toBe("Table 1; Table 1, 1.7");
  });

  it("lose none of what follows it", () => {
    const reference = fc
      .tuple(fc.constantFrom("Table 1", "Table 8.1", "7.24"), fc.constantFrom("", "1.7", "(2)", "3.1"))
      .map(([head, rest]) => (rest === "" ? head : `${head}, ${rest}`));
    fc.assert(
      fc.property(fc.uniqueArray(reference, { minLength: 1, maxLength: 12 }), (all) => {
        const words = (text: string) =>
          text
            .split(/[;:,] /)
            .filter((word) => !/^Table|^7\./.test(word))
            .sort();
        expect(words(foldClauses(all.join("; ")))).toEqual(words(all.join("; ")));
      }),
      { seed: 3, numRuns: 200 },
    );
  });
});
