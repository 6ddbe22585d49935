import { describe, expect, it } from "vitest";
import { evaluateFormula, formulaText, symbolsIn, type Symbols } from "@/lib/accept/formula";
import type { Formula } from "@/lib/accept/rule";

const none: Symbols = {
  t: null,
  s: null,
  a: null,
  b: null,
  z: null,
  L: null,
  r: null,
  m: null,
  h: null,
  A: null,
};
const capped: Formula = { min: [{ sum: [1, { times: 0.6, of: "r" }] }, 4] };

describe("evaluateFormula", () => {
  it("is a number when every symbol is known", () => {
    const range = evaluateFormula(capped, { ...none, r: { value: 3, spread: 0 } }, "si");
    expect(range).toMatchObject({ low: 2.8, high: 2.8, spread: 0, unknown: [] });
  });

  it("is bounded by its cap when a symbol is not", () => {
    expect(evaluateFormula(capped, none, "si")).toMatchObject({ low: 1, high: 4, unknown: ["r"] });
  });

  it("does not ask for a symbol that the cap makes irrelevant", () => {
    const zeroCap: Formula = { min: [{ times: 2, of: "t" }, 0] };
    expect(evaluateFormula(zeroCap, none, "si").unknown).toEqual([]);
  });

  it("carries the uncertainty of a measured symbol with its slope, and none where the cap acts", () => {
    const b = (value: number): Symbols => ({ ...none, r: { value, spread: 0.5 } });
    expect(evaluateFormula(capped, b(3), "si").spread).toBeCloseTo(0.3, 12);
    expect(evaluateFormula(capped, b(30), "si").spread).toBe(0);
  });

  it("keeps the two unit systems apart", () => {
    const depth: Formula = { si: 1, us: 25.4 / 32 };
    expect(evaluateFormula(depth, none, "us").low).toBe(0.79375);
    expect(evaluateFormula(depth, none, "si").low).toBe(1);
  });

  it("writes itself as the standard does", () => {
    expect(formulaText(capped, "si")).toBe("min(1 + 0.6 r, 4)");
    expect(
      symbolsIn({
        max: [
          { times: 1, of: "L" },
          { times: 2, of: "a" },
        ],
      }),
    ).toEqual(["a", "L"]);
  });
});
