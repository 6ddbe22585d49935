import { expect, it } from "vitest";
import { sumQuantities } from "@/lib/measure";
import { type BudgetPart } from "@/lib/measure/types";
import { chance, normal } from "./camera";

/** Reached through the door: the sum of one quantity is that quantity, its interval made anew from the budget. */
const expanded = (...budget: BudgetPart[]): number =>
  sumQuantities([{ unit: "mm", value: 5, expandedUncertainty: 0, source: "photo", budget }])
    .expandedUncertainty;

it("normal parts: two standard uncertainties (JCGM 100:2008, 6.2)", () => {
  expect(expanded({ part: "picks", u: 3 }, { part: "height", u: 4 })).toBe(10);
});

it("a two-valued part alone is held by the larger of its two, and one of nought changes nothing", () => {
  expect(expanded({ part: "near-side", u: 0.7, odds: 0.5 })).toBeCloseTo(0.7, 9);
  // One in ten: a tenth and nine tenths of the whole way, which is u / sqrt(0.09).
  expect(expanded({ part: "near-side", u: 0.3, odds: 0.1 })).toBeCloseTo(0.9, 9);
  expect(expanded({ part: "near-side", u: 0, odds: 0.5 }, { part: "picks", u: 0.3 })).toBe(0.6);
});

// 95.45 % is what two standard deviations hold of a normal error; 40,000 draws leave a standard error of 0.1 %.
it.each([
  [0.3, 0.5],
  [1, 0.5],
  [2, 0.5],
  [5, 0.5],
  [0.5, 0.2],
  [2, 0.2],
  [2, 0.03],
])(
  "together with a normal part, %s times as large at odds of %s, it is held as often as two sigma",
  (u, odds) => {
    const half = expanded({ part: "near-side", u, odds }, { part: "picks", u: 1 });
    const random = chance(Math.round(100 * u + 10 * odds));
    const apart = u / Math.sqrt(odds * (1 - odds));
    let inside = 0;
    for (let i = 0; i < 40_000; i++) {
      const toss = random() < odds ? (odds - 1) * apart : odds * apart;
      if (Math.abs(toss + normal(random)) <= half) inside++;
    }
    expect(Math.abs(inside / 40_000 - 0.9545)).toBeLessThan(0.0042);
  },
);
