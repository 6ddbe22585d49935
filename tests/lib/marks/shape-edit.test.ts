import { describe, expect, it } from "vitest";
import {
  emptyDrawing,
  mapScalePoints,
  newMark,
  reduce,
  startHistory,
  type Drawing,
  type DrawingAction,
  type MarkShapeData,
} from "@/lib/marks";
import { DrawingSchema } from "@/lib/marks/drawing";

/** Set far out, 6 photo pixels under each CSS pixel; invented. */
const shape: MarkShapeData = {
  kind: "line",
  points: [
    { x: 100, y: 40, grainPx: 6 },
    { x: 700, y: 90, grainPx: 6 },
  ],
};
const drawing: Drawing = { ...emptyDrawing, marks: [newMark("m", "undercut", shape)] };
const after = (action: DrawingAction): readonly unknown[] => {
  const changed = reduce(startHistory(drawing), action).present.marks[0]!.shape;
  return changed.kind === "point" ? [changed.at] : changed.points;
};

describe("the grain a point was set with", () => {
  it("is stored with the drawing and read back; a drawing without it reads as before", () => {
    const text = JSON.stringify(drawing);
    expect(DrawingSchema.parse(JSON.parse(text))).toEqual(drawing);
    const old: unknown = JSON.parse(text, (key, value: unknown) => (key === "grainPx" ? undefined : value));
    expect(DrawingSchema.parse(old)).toEqual(old);
  });

  it("of a point set anew is the new one, the others keep theirs", () => {
    expect(after({ type: "mark.movePoint", id: "m", index: 1, to: { x: 690, y: 95, grainPx: 0.5 } })).toEqual(
      [
        { x: 100, y: 40, grainPx: 6 },
        { x: 690, y: 95, grainPx: 0.5 },
      ],
    );
    expect(after({ type: "mark.insertPoint", id: "m", index: 1, at: { x: 400, y: 80, grainPx: 2 } })).toEqual(
      [
        { x: 100, y: 40, grainPx: 6 },
        { x: 400, y: 80, grainPx: 2 },
        { x: 700, y: 90, grainPx: 6 },
      ],
    );
  });

  it("is forgotten when a point is set anew by someone who does not know it", () => {
    expect(after({ type: "mark.movePoint", id: "m", index: 0, to: { x: 1, y: 2 } })[0]).toEqual({
      x: 1,
      y: 2,
    });
  });

  it("stays when the whole mark is shifted", () => {
    expect(after({ type: "mark.moveBy", id: "m", by: { x: 5, y: -5 } })[0]).toEqual({
      x: 105,
      y: 35,
      grainPx: 6,
    });
  });

  it("of a scale's point travels with it", () => {
    const scale = { kind: "two-points", a: { x: 1, y: 2 }, b: { x: 30, y: 4 }, lengthMm: 10 } as const;
    expect(mapScalePoints(scale, (p, i) => (i === 1 ? { x: 31, y: 4, grainPx: 0.7 } : p))).toEqual({
      ...scale,
      b: { x: 31, y: 4, grainPx: 0.7 },
    });
  });
});
