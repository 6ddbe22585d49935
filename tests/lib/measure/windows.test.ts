import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { worstAmount, worstLength } from "@/lib/measure";
import { leastSpacing, worstCount } from "@/lib/measure/windows";

const runs = { numRuns: 300, seed: 11 };
/** Whole numbers, so that the brute force over every whole start is exact. */
const place = fc.integer({ min: 0, max: 120 });
const stretch = fc.tuple(place, fc.integer({ min: 0, max: 40 })).map(([a, l]) => [a, a + l] as const);

describe("worst windows against brute force", () => {
  it("worstAmount: the window holds both its ends", () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ at: place, amount: fc.integer({ min: 1, max: 9 }) }), { maxLength: 14 }),
        fc.integer({ min: 1, max: 60 }),
        (items, window) => {
          let brute = 0;
          for (let start = -70; start <= 130; start++)
            brute = Math.max(
              brute,
              items
                .filter(({ at }) => at >= start && at <= start + window)
                .reduce((sum, { amount }) => sum + amount, 0),
            );
          expect(worstAmount(items, window).sum).toBe(brute);
        },
      ),
      runs,
    );
  });

  it("worstLength: stretches side by side count each, stretches across an edge count in part", () => {
    fc.assert(
      fc.property(fc.array(stretch, { maxLength: 8 }), fc.integer({ min: 1, max: 60 }), (list, window) => {
        let brute = 0;
        for (let start = -70; start <= 170; start++)
          brute = Math.max(
            brute,
            list.reduce(
              (sum, [from, to]) => sum + Math.max(0, Math.min(to, start + window) - Math.max(from, start)),
              0,
            ),
          );
        expect(worstLength(list, window).sum).toBe(brute);
      }),
      runs,
    );
  });

  it("on a closed weld, windows across the closing point count as any other: turning the weld changes nothing", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 99 }), { minLength: 1, maxLength: 10 }),
        fc.integer({ min: 0, max: 99 }),
        fc.integer({ min: 1, max: 90 }),
        (places, turn, window) => {
          const turned = places.map((at) => (at + turn) % 100);
          expect(worstCount(turned, window, 100).sum).toBe(worstCount(places, window, 100).sum);
        },
      ),
      runs,
    );
  });

  it("three pores exactly one window apart are counted together, a hair further they are not", () => {
    expect(worstCount([0.1, 12.7, 25.1], 25).sum).toBe(3);
    expect(worstCount([0.1, 12.7, 25.11], 25).sum).toBe(2);
  });

  it("leastSpacing is that of the nearest neighbours, infinite for one alone", () => {
    expect(leastSpacing([30, 3, 11, 17])).toBe(6);
    expect(leastSpacing([5])).toBe(Infinity);
  });
});

/** The windows the codes name, in tenths of a millimetre so that brute force can count in whole numbers. */
describe("the worst 25 mm, 1 in, 100 mm, 300 mm and 12 in against brute force, read in tenths of a millimetre", () => {
  const tenths = fc.integer({ min: 0, max: 6000 });
  it.each([250, 254, 1000, 3000, 3048])("%s tenths", (window) => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ at: tenths, amount: fc.integer({ min: 1, max: 40 }) }), { maxLength: 25 }),
        fc.array(
          fc.tuple(tenths, fc.integer({ min: 1, max: 900 })).map(([a, l]) => [a, a + l] as const),
          { maxLength: 6 },
        ),
        (pores, stretches) => {
          let amount = 0;
          let count = 0;
          let length = 0;
          for (let start = -window; start <= 7000; start++) {
            const inside = pores.filter(({ at }) => at >= start && at <= start + window);
            amount = Math.max(
              amount,
              inside.reduce((sum, one) => sum + one.amount, 0),
            );
            count = Math.max(count, inside.length);
            length = Math.max(
              length,
              stretches.reduce(
                (sum, [from, to]) => sum + Math.max(0, Math.min(to, start + window) - Math.max(from, start)),
                0,
              ),
            );
          }
          const mm = window / 10;
          const places = pores.map(({ at, amount }) => ({ at: at / 10, amount: amount / 10 }));
          expect(worstAmount(places, mm).sum).toBeCloseTo(amount / 10, 9);
          expect(
            worstCount(
              places.map(({ at }) => at),
              mm,
            ).sum,
          ).toBe(count);
          expect(
            worstLength(
              stretches.map(([a, b]) => [a / 10, b / 10] as const),
              mm,
            ).sum,
          ).toBeCloseTo(length / 10, 9);
        },
      ),
      { numRuns: 25, seed: 41 },
    );
  });
});
