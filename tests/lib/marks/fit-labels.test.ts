import { describe, expect, test } from "vitest";
import { emptyDrawing, fitLabels, newMark, scene } from "@/lib/marks";

const pores = [100, 130, 160, 400].map((x, i) =>
  newMark(`p${i}`, "surface-porosity", { kind: "point", at: { x, y: 200 }, radius: 5 }),
);
const crowded = scene({ ...emptyDrawing, marks: pores }, { labels: (m) => `Surface porosity ${m.id}` });
const words = (unitPx: number, favoured: string | null = null) =>
  fitLabels(crowded, unitPx, favoured)
    .filter((shape) => shape.kind === "label")
    .map((label) => label.markId);

describe("fitLabels", () => {
  test("words that would lie on others go; numbers stay", () => {
    expect(words(1)).toEqual(["p2", "p3"]);
    expect(fitLabels(crowded, 1).filter((shape) => shape.kind === "badge")).toHaveLength(4);
  });

  test("zooming in brings them all back", () => {
    expect(words(0.1)).toEqual(["p0", "p1", "p2", "p3"]);
  });

  test("the favoured mark keeps its words whatever is in the way", () => {
    expect(words(1, "p0")).toContain("p0");
  });

  test("nothing to drop gives the shapes in the same order", () => {
    expect(fitLabels(crowded, 0.1)).toEqual(crowded);
  });
});
