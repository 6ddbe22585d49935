import { describe, expect, it } from "vitest";
import { reliability } from "./reliability";

describe("the reliability table", () => {
  // Counted by hand.
  const told = [
    { probability: 0, right: false },
    { probability: 0.1, right: true },
    { probability: 0.2, right: true },
    { probability: 0.6, right: true },
    { probability: 0.68, right: false },
    { probability: 1, right: true },
  ];

  it("counts each first cause in one band, the lower end within it", () => {
    const table = reliability(told);
    expect(table.map(({ of, right }) => [of, right])).toEqual([
      [2, 1],
      [1, 1],
      [0, 0],
      [2, 1],
      [1, 1],
    ]);
    expect(table[3]!.stated).toBeCloseTo(0.64);
    expect(table[2]!.stated).toBeNull();
    expect(table.map(({ to }) => to)).toEqual([0.2, 0.35, 0.5, 0.7, 1]);
  });
});
