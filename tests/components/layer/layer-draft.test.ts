import { describe, expect, test } from "vitest";
import { draftItem, textItem } from "@/components/layer/layer-draft";

const at = (x: number, y: number) => ({ x, y });

describe("an item from the points of a hand", () => {
  test("an arrow needs two places", () => {
    expect(draftItem("arrow", "a", [at(1, 2)], 1)).toBeNull();
    expect(draftItem("arrow", "a", [at(1, 2), at(1, 2)], 1)).toBeNull();
    expect(draftItem("arrow", "a", [at(1.04, 2), at(9, 3), at(30.06, 4)], 1)).toEqual({
      id: "a",
      kind: "arrow",
      from: at(1, 2),
      to: at(30.1, 4),
      words: "",
    });
  });

  test("an outline needs three corners, a freehand line two ends; needless points go", () => {
    const straight = Array.from({ length: 50 }, (_, i) => at(i, 0));
    expect(draftItem("freehand", "f", straight, 1)).toEqual({
      id: "f",
      kind: "freehand",
      points: [at(0, 0), at(49, 0)],
    });
    expect(draftItem("outline", "o", straight, 1)).toBeNull();
    expect(draftItem("outline", "o", [at(0, 0), at(40, 0), at(20, 30)], 1)).toMatchObject({
      kind: "outline",
    });
  });

  test("words that say nothing are no text", () => {
    expect(textItem("t", at(1, 2), "  ")).toBeNull();
    expect(textItem("t", at(1, 2), " Slower here ")).toEqual({
      id: "t",
      kind: "text",
      at: at(1, 2),
      words: "Slower here",
    });
  });
});
