import { describe, expect, it } from "vitest";
import type { Homography } from "@/lib/geometry";
import { emptyDrawing, warpDrawing, type Drawing, type Mark } from "@/lib/marks";

const mark = (id: string, shape: Mark["shape"]): Mark => ({
  id,
  imperfection: "surface-porosity",
  shape,
  place: null,
  stretch: null,
  patterns: [],
  gauge: [],
  note: "",
});

const drawing: Drawing = {
  ...emptyDrawing,
  scale: { kind: "two-points", a: { x: 0, y: 0 }, b: { x: 10, y: 0 }, lengthMm: 5 },
  weldLine: [
    { x: 0, y: 0 },
    { x: 10, y: 0 },
  ],
  marks: [
    mark("pore", { kind: "point", at: { x: 4, y: 2 }, radius: 3 }),
    mark("spot", { kind: "point", at: { x: 4, y: 2 }, radius: null }),
    mark("line", {
      kind: "line",
      points: [
        { x: 1, y: 1 },
        { x: 2, y: 5 },
      ],
    }),
  ],
};

describe("a drawing on a picture that was turned", () => {
  it("turns every point along, and circles grow with the picture", () => {
    // A quarter turn, twice as large, shifted: (x, y) -> (100 - 2 y, 2 x).
    const map: Homography = [0, -2, 100, 2, 0, 0, 0, 0, 1];
    const warped = warpDrawing(drawing, map);
    expect(warped.weldLine).toEqual([
      { x: 100, y: 0 },
      { x: 100, y: 20 },
    ]);
    expect(warped.marks.map(({ shape }) => shape)).toEqual([
      { kind: "point", at: { x: 96, y: 8 }, radius: 6 },
      { kind: "point", at: { x: 96, y: 8 }, radius: null },
      {
        kind: "line",
        points: [
          { x: 98, y: 2 },
          { x: 90, y: 4 },
        ],
      },
    ]);
  });

  it("keeps what the marks say, and leaves the scale to the photo as it was taken", () => {
    const warped = warpDrawing(drawing, [1, 0, 0, 0, 1, 0, 0, 0, 1]);
    expect(warped).toEqual({ ...drawing, scale: null });
  });
});
