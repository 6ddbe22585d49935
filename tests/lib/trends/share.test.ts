import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { shareOf, type Share } from "@/lib/trends";
import { type ShareMethod } from "@/lib/trends/share";
import reference from "../../reference/beta/data.json";

/**
 * Newcombe, "Two-sided confidence intervals for the single proportion: comparison of seven methods", Statistics in
 * Medicine 17 (1998), 857-872, Table I, methods 3 (score) and 5 (Clopper-Pearson). From memory, four decimals.
 */
const newcombe: readonly [count: number, of: number, method: ShareMethod, low: number, high: number][] = [
  [81, 263, "wilson", 0.2553, 0.3662],
  [15, 148, "wilson", 0.0624, 0.1605],
  [0, 20, "wilson", 0, 0.1611],
  [1, 29, "wilson", 0.0061, 0.1718],
  [81, 263, "clopper-pearson", 0.2527, 0.3676],
  [15, 148, "clopper-pearson", 0.0578, 0.1617],
  [0, 20, "clopper-pearson", 0, 0.1684],
  [1, 29, "clopper-pearson", 0.0009, 0.1776],
];

/** Half a unit of the last printed digit. */
const printed = (actual: number, expected: number) =>
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(0.00005 + 1e-12);

describe("intervals of a share", () => {
  it.each(newcombe)("%i of %i, %s: as in Newcombe 1998, Table I", (count, of, method, low, high) => {
    const share = shareOf(count, of, method);
    printed(share.low, low);
    printed(share.high, high);
  });

  it.each(reference.shares)(
    `$count of $of: as ${reference.library} has it`,
    ({ count, of, wilson, exact }) => {
      const score = shareOf(count, of, "wilson");
      const tails = shareOf(count, of, "clopper-pearson");
      [score.low, score.high].forEach((end, i) => expect(end).toBeCloseTo(wilson[i] ?? NaN, 12));
      [tails.low, tails.high].forEach((end, i) => expect(end).toBeCloseTo(exact[i] ?? NaN, 10));
    },
  );
});

/** P(X = k) for k = 0..n by the recurrence from the largest term, summed to 1: shares nothing with the code under test. */
function binomial(n: number, p: number): readonly number[] {
  const mode = Math.min(n, Math.floor((n + 1) * p));
  const weights = Array.from({ length: n + 1 }, () => 0);
  weights[mode] = 1;
  for (let k = mode; k < n; k++) weights[k + 1] = (((weights[k] ?? 0) * (n - k)) / (k + 1)) * (p / (1 - p));
  for (let k = mode; k > 0; k--) weights[k - 1] = (((weights[k] ?? 0) * k) / (n - k + 1)) * ((1 - p) / p);
  const sum = weights.reduce((a, b) => a + b, 0);
  return weights.map((w) => w / sum);
}

function coverage(n: number, p: number, method: ShareMethod): number {
  return binomial(n, p).reduce((sum, weight, k) => {
    const { low, high } = shareOf(k, n, method);
    return low <= p && p <= high ? sum + weight : sum;
  }, 0);
}

const size = fc.integer({ min: 1, max: 60 });
const sizeAndCount = size.chain((of) => fc.tuple(fc.integer({ min: 0, max: of }), fc.constant(of)));
const chance = fc.double({ min: 0.001, max: 0.999, noNaN: true });

describe("coverage", () => {
  it("of Clopper-Pearson is never below 95 %", () => {
    fc.assert(
      fc.property(size, chance, (n, p) => {
        expect(coverage(n, p, "clopper-pearson")).toBeGreaterThanOrEqual(0.95 - 1e-9);
      }),
    );
  });

  it("of Wilson is close to 95 % on average over all true shares", () => {
    for (const n of [5, 10, 20, 50]) {
      const steps = 400;
      const mean =
        Array.from({ length: steps }, (_, i) => coverage(n, (i + 0.5) / steps, "wilson")).reduce(
          (a, b) => a + b,
          0,
        ) / steps;
      // Newcombe 1998, Table II gives a mean of 0.952 for method 3 (from memory); small n scatter around it.
      expect(mean).toBeGreaterThan(0.945);
      expect(mean).toBeLessThan(0.965);
    }
  });
});

describe("laws", () => {
  it("Wilson's ends are where the score test just rejects: |count/of - p| = z sqrt(p (1 - p) / of)", () => {
    fc.assert(
      fc.property(sizeAndCount, ([count, of]) => {
        const { low, high } = shareOf(count, of, "wilson");
        for (const p of [low, high].filter((end) => end > 0 && end < 1))
          expect(Math.abs(count / of - p)).toBeCloseTo(1.959963984540054 * Math.sqrt((p * (1 - p)) / of), 10);
      }),
    );
  });

  it("Clopper-Pearson's ends leave 2.5 % in each tail", () => {
    fc.assert(
      fc.property(sizeAndCount, ([count, of]) => {
        const { low, high } = shareOf(count, of, "clopper-pearson");
        const tail = (p: number, within: (k: number) => boolean) =>
          binomial(of, p).reduce((sum, weight, k) => (within(k) ? sum + weight : sum), 0);
        if (count > 0) expect(tail(low, (k) => k >= count)).toBeCloseTo(0.025, 9);
        if (count < of) expect(tail(high, (k) => k <= count)).toBeCloseTo(0.025, 9);
      }),
    );
  });

  it("counting the others mirrors the interval, and the share lies in it", () => {
    fc.assert(
      fc.property(
        sizeAndCount,
        fc.constantFrom<ShareMethod>("wilson", "clopper-pearson"),
        ([count, of], method) => {
          const share = shareOf(count, of, method);
          const others = shareOf(of - count, of, method);
          expect(others.low).toBeCloseTo(1 - share.high, 10);
          expect(others.high).toBeCloseTo(1 - share.low, 10);
          expect(share.low).toBeLessThanOrEqual(count / of);
          expect(share.high).toBeGreaterThanOrEqual(count / of);
        },
      ),
    );
  });
});

describe("what cannot be a share", () => {
  it("nothing counted has no value, and an interval that says nothing is known", () => {
    expect(shareOf(0, 0)).toMatchObject({ value: null, low: 0, high: 1 });
  });

  it("counts that cannot be are our own mistake", () => {
    for (const [count, of] of [
      [4, 3],
      [-1, 3],
      [0.5, 3],
      [1, NaN],
    ] as const)
      expect(() => shareOf(count, of)).toThrow("share");
  });

  it("cannot be put together without its interval being computed", () => {
    const plain = { count: 2, of: 3, value: 2 / 3, low: 0.6, high: 0.7, method: "wilson" as const };
    // @ts-expect-error the mark of a Share is private to the room
    const forged: Share = plain;
    expect(shareOf(2, 3).low).not.toBeCloseTo(forged.low, 2);
  });
});
