import { describe, expect, test } from "vitest";
import { isStale } from "@/components/canvas/use-held-draft";
import { pickedHint, sayChange, sayMark, sayStep } from "@/components/canvas/words";
import { emptyDrawing, newMark, reduce, startHistory } from "@/lib/marks";

const toe = newMark("toe", "undercut", {
  kind: "line",
  points: [
    { x: 0, y: 0 },
    { x: 90, y: 0 },
  ],
});
const drawing = { ...emptyDrawing, marks: [toe] };

describe("what is said", () => {
  test("a mark by its name, its number and its size", () => {
    expect(sayMark(toe, 3, "42 mm")).toBe("Undercut 3, 42 mm");
    expect(sayMark(toe, 3)).toBe("Undercut 3");
  });

  test("a change by what it changed", () => {
    const size = () => "42 mm";
    expect(sayChange({ type: "mark.moveBy", id: "toe", by: { x: 1, y: 0 } }, drawing, size)).toBe(
      "Undercut 1, 42 mm, moved",
    );
    expect(sayChange({ type: "mark.removePoint", id: "toe", index: 1 }, drawing, size)).toBe(
      "Undercut 1, 42 mm, changed",
    );
    expect(sayChange({ type: "weldLine.set", points: [] }, drawing, size)).toBe("Weld line changed");
  });

  test("undo and redo by what is left, or that there was nothing", () => {
    const history = reduce(startHistory(emptyDrawing), { type: "mark.add", mark: toe });
    expect(sayStep("undo", history)).toBe("Undone. 0 marks on the photo.");
    expect(sayStep("redo", history)).toBe("Nothing to redo");
  });

  test("a picked point, and whether it can be spared", () => {
    expect(pickedHint(2, 5, true)).toBe("Point 2 of 5. Drag it, or remove it.");
    expect(pickedHint(1, 2, false)).toContain("the shape needs it");
  });
});

describe("a draft loses its ground", () => {
  const ground = { tool: "scale", scale: null, scaleKind: "disc" } as const;
  const asked = { kind: "unmeasured", scaleKind: "disc", points: [] } as const;
  const scale = { kind: "two-points", a: { x: 0, y: 0 }, b: { x: 9, y: 0 }, lengthMm: 5 } as const;

  test("with another tool, another object to pick, or once its scale was set", () => {
    expect(isStale(null, ground, { ...ground, tool: "line" })).toBe(true);
    expect(isStale(null, ground, { ...ground, scaleKind: "edges" })).toBe(true);
    expect(isStale(asked, ground, { ...ground, scale })).toBe(true);
  });

  test("but not while all is as it was, nor a line by another scale object", () => {
    expect(isStale(asked, ground, ground)).toBe(false);
    const line = { ...ground, tool: "line" } as const;
    expect(isStale(null, line, { ...line, scaleKind: "edges" })).toBe(false);
  });
});
