import { expect, it } from "vitest";
import { electrodeClass, sizesWithRows } from "@/lib/trade";

it("names the sizes as they are stored, ascending", () => {
  expect(sizesWithRows(electrodeClass("E71T-11")!)).toEqual([0.8, 0.9, 1.2, 1.7]);
  expect(sizesWithRows(electrodeClass("E71T-8")!)).toEqual([1.6, 1.7, 1.8, 2]);
  expect(sizesWithRows(electrodeClass("E308LT0-3")!)).toEqual([0.9, 1.2, 1.6]);
});

it("has none for rods, though a rod shares the name of a wire", () => {
  expect(sizesWithRows(electrodeClass("ER70S-6", "GTAW")!)).toEqual([]);
  expect(sizesWithRows(electrodeClass("ER70S-6", "GMAW")!)).toEqual([0.8, 0.9, 1.2]);
  expect(sizesWithRows(electrodeClass("E7018")!)).toEqual([]);
});
