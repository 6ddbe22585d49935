import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { changeSentence, shareOf } from "@/lib/trends";
import { differenceOf } from "@/lib/trends/difference";

describe("the interval of a difference of shares", () => {
  // Newcombe 1998, Statistics in Medicine 17, 873-890, table II, method 10 (restated from memory).
  it.each([
    [56, 70, 48, 80, 0.0524, 0.3339],
    [9, 10, 3, 10, 0.1705, 0.809],
    [6, 7, 2, 7, 0.0582, 0.8062],
    [5, 56, 0, 29, -0.0381, 0.1926],
    [0, 10, 0, 20, -0.1611, 0.2775],
    [0, 10, 0, 10, -0.2775, 0.2775],
    [10, 10, 0, 20, 0.6791, 1],
    [10, 10, 0, 10, 0.6075, 1],
  ])("%d of %d less %d of %d is %d to %d", (a, m, b, n, low, high) => {
    const found = differenceOf(shareOf(a, m), shareOf(b, n))!;
    expect(found.low).toBeCloseTo(low, 4);
    expect(found.high).toBeCloseTo(high, 4);
  });

  const share = fc
    .integer({ min: 1, max: 60 })
    .chain((of) => fc.integer({ min: 0, max: of }).map((count) => shareOf(count, of)));

  it("turns round with its shares, holds the difference, and stays within -1 and 1", () => {
    fc.assert(
      fc.property(share, share, (a, b) => {
        const [one, other] = [differenceOf(a, b)!, differenceOf(b, a)!];
        expect(one.low).toBeCloseTo(-other.high, 12);
        expect(one.low <= one.value && one.value <= one.high).toBe(true);
        expect(one.low >= -1 - 1e-12 && one.high <= 1 + 1e-12).toBe(true);
      }),
      { numRuns: 200, seed: 18 },
    );
  });

  it("is none where nothing was counted", () => {
    expect(differenceOf(shareOf(0, 0), shareOf(1, 2))).toBeNull();
  });
});

describe("what changed since the last period", () => {
  const at = (label: string, count: number, of: number) => ({ label, share: shareOf(count, of) });

  it("is said where the interval leaves out nought, with both counts and how far", () => {
    const line = changeSentence([at("2026-W46", 0, 9), at("2026-W47", 48, 80), at("2026-W48", 56, 70)]);
    expect(line).toBe(
      "More rejects in 2026-W48 (56 of 70) than in 2026-W47 (48 of 80): by 5 to 33 points in a hundred, 95 % interval.",
    );
    expect(changeSentence([at("a", 56, 70), at("b", 48, 80)])).toContain("Fewer rejects in b (48 of 80)");
  });

  it("is silent where chance may be all there is, and where there is one period or none", () => {
    expect(changeSentence([at("a", 0, 29), at("b", 5, 56)])).toBeNull();
    expect(changeSentence([at("a", 1, 2), at("b", 0, 2)])).toBeNull();
    expect(changeSentence([at("a", 5, 5)])).toBeNull();
    expect(changeSentence([])).toBeNull();
  });

  it("speaks of pure chance in at most some five of a hundred pairs", () => {
    let state = 11;
    const chance = () => (state = (state * 48271) % 2147483647) / 2147483647;
    const drawn = (of: number, p: number) => Array.from({ length: of }).filter(() => chance() < p).length;
    let said = 0;
    for (let i = 0; i < 2000; i++) {
      const p = 0.1 + 0.4 * chance();
      said += Number(changeSentence([at("a", drawn(24, p), 24), at("b", drawn(30, p), 30)]) !== null);
    }
    expect(said / 2000).toBeLessThan(0.065);
  });
});
