import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ANSWER_COLUMNS, ANSWER_ROWS, STRIP } from "@/lib/trace/strip-size";
import { shares, toePath } from "@/lib/trace/toe-path";
import { createRandom } from "@/demo-images/noise/random";

/** A drawn answer: a ridge along a known toe, every seventh column higher somewhere else, every eleventh silent. */
function drawn(seed: number): { readonly logits: Float32Array; readonly truth: (column: number) => number } {
  const random = createRandom(seed);
  const [level, sway, long] = [random.between(70, 180), random.between(0, 30), random.between(25, 90)];
  const truth = (column: number): number => level + sway * Math.sin(column / long);
  const logits = new Float32Array(2 * ANSWER_ROWS * ANSWER_COLUMNS);
  for (let column = 0; column < ANSWER_COLUMNS; column++) {
    const stray = column % 7 === 3 ? Math.floor(random.between(5, 250)) : -99;
    for (let row = 0; row < STRIP.rows; row++) {
      const ridge = column % 11 === 5 ? 0 : 6 * Math.exp(-0.5 * ((row + 0.5 - truth(column)) / 2) ** 2);
      logits[row * ANSWER_COLUMNS + column] = ridge + (Math.abs(row - stray) < 2 ? 8 : 0);
    }
  }
  return { logits, truth };
}

/** The likeliest row of each column by itself, without a path. */
const plainMaxima = (share: Float64Array): number[] =>
  Array.from({ length: ANSWER_COLUMNS }, (_, column) => {
    let best = 0;
    for (let row = 1; row < STRIP.rows; row++)
      if (share[row * ANSWER_COLUMNS + column]! > share[best * ANSWER_COLUMNS + column]!) best = row;
    return best + 0.5;
  });

describe("a toe's path", () => {
  it("keeps to the ridge over columns that say something else or nothing", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const { logits, truth } = drawn(seed);
        const share = shares(logits, 0);
        const { rows, sure } = toePath(share, 8);
        for (let column = 0; column < ANSWER_COLUMNS; column++) {
          // Where only a stray speaks, it may pull the path by what a toe may move in a column or two, and no farther.
          const spoken = column % 7 !== 3 && column % 11 !== 5;
          expect(Math.abs(rows[column]! - truth(column)), `column ${column}`).toBeLessThan(spoken ? 4 : 13);
        }
        // Without the path the strays win: the law would see it.
        const off = plainMaxima(share).filter((row, column) => Math.abs(row - truth(column)) > 4).length;
        expect(off).toBeGreaterThan(30);
        // And it says where it was led by nothing.
        const said = (rest: number) =>
          Array.from(sure)
            .filter((_, c) => c % 11 === rest && c % 7 !== 3)
            .reduce((a, b) => Math.max(a, b), 0);
        expect(said(5)).toBeLessThan(0.2);
      }),
      { seed: 5, numRuns: 10 },
    );
  });

  it("finds a place between rows", () => {
    const logits = new Float32Array(2 * ANSWER_ROWS * ANSWER_COLUMNS).fill(-20);
    for (let column = 0; column < ANSWER_COLUMNS; column++)
      for (let row = 90; row < 110; row++)
        logits[row * ANSWER_COLUMNS + column] = -0.5 * ((row + 0.5 - 100.3) / 1.5) ** 2;
    expect(toePath(shares(logits, 0), 8).rows[200]!).toBeCloseTo(100.3, 1);
  });
});
