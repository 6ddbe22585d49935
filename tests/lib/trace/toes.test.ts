import { describe, expect, it } from "vitest";
import { editDrawing } from "@/lib/marks/edit-drawing";
import { emptyDrawing, warpDrawing } from "@/lib/marks";
import { ToesSchema } from "@/lib/marks/drawing";
import { stationsOf, toesOf } from "@/lib/trace";
import type { TraceStation } from "@/lib/trace/types";

const stations = Array.from({ length: 300 }, (_, i): TraceStation => {
  const toe = (y: number) => ({
    at: { x: 3 * i, y },
    sigmaPx: 0.7,
    sure: i % 50 === 0 ? 0.3 : 0.99,
    spread: 0.01,
  });
  return { alongPx: 3 * i, upper: toe(100), lower: toe(160), widthPx: 60, end: i < 15 || i > 284 };
});

describe("toes in a drawing", () => {
  const toes = toesOf({ stations, widthPx: 60, lengthPx: 900 });

  it("are what the schema keeps, and give the stations back", () => {
    expect(ToesSchema.parse(toes)).toEqual(toes);
    const back = stationsOf(toes);
    expect(back).toHaveLength(120);
    expect(back.every(({ widthPx }) => Math.abs(widthPx - 60) < 0.02)).toBe(true);
    expect(back[back.length - 1]!.alongPx).toBeCloseTo(897, 0);
    expect(back.filter(({ end }) => end).length).toBeGreaterThan(8);
  });

  it("go along when the picture is laid another way", () => {
    const map = [2, 0, 10, 0, 2, -20, 0, 0, 1] as unknown as Parameters<typeof warpDrawing>[1];
    const { x, y } = toes.upper[7]!;
    expect(warpDrawing({ ...emptyDrawing, toes }, map).toes!.upper[7]).toMatchObject({
      x: 2 * x + 10,
      y: 2 * y - 20,
    });
  });

  it("are set, corrected point by point and taken away; a corrected point is sure", () => {
    const set = editDrawing(emptyDrawing, { type: "toes.set", toes });
    const moved = editDrawing(set, {
      type: "toes.movePoint",
      toe: "lower",
      index: 5,
      to: { x: 40, y: 170, grainPx: 2 },
    });
    expect(moved.toes!.lower[5]).toEqual({ x: 40, y: 170, sigmaPx: 2, sure: 1 });
    expect(moved.toes!.upper).toEqual(set.toes!.upper);
    expect(editDrawing(moved, { type: "toes.movePoint", toe: "lower", index: 999, to: { x: 1, y: 1 } })).toBe(
      moved,
    );
    const cleared = editDrawing(moved, { type: "toes.clear" });
    expect("toes" in cleared).toBe(false);
    expect(editDrawing(cleared, { type: "toes.clear" })).toBe(cleared);
  });
});
