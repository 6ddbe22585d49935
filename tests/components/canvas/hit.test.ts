import { describe, expect, test } from "vitest";
import { handleAt, handlesOf } from "@/components/canvas/handles";
import { markAt } from "@/components/canvas/hit";
import {
  emptyDrawing,
  newMark,
  reduce,
  scene,
  startHistory,
  type Drawing,
  type DrawingAction,
} from "@/lib/marks";

const pocket = newMark("pocket", "stuck-slag", {
  kind: "outline",
  points: [
    { x: 600, y: 300 },
    { x: 900, y: 310 },
    { x: 880, y: 500 },
  ],
});
const pore = newMark("pore", "surface-porosity", { kind: "point", at: { x: 850, y: 380 }, radius: 12 });
const drawing: Drawing = {
  ...emptyDrawing,
  scale: { kind: "two-points", a: { x: 10, y: 700 }, b: { x: 260, y: 705 }, lengthMm: 25 },
  weldLine: [
    { x: 40, y: 350 },
    { x: 500, y: 340 },
    { x: 950, y: 360 },
  ],
  marks: [pocket, pore],
};
const shapes = scene(drawing, { labels: () => "" });

describe("markAt", () => {
  test.each([
    ["a pore inside an outline wins over the outline", { x: 852, y: 383 }, "pore"],
    ["inside the outline", { x: 820, y: 340 }, "pocket"],
    ["the number hangs outside and answers too", { x: 600, y: 280 }, "pocket"],
    ["beyond reach", { x: 300, y: 600 }, null],
  ])("%s", (_, at, id) => {
    expect(markAt(drawing, shapes, at, 22, 1)).toBe(id);
  });
});

describe("handles", () => {
  const apply = (tool: "move" | "scale" | "weld-line", key: string, to: { x: number; y: number }) => {
    const handle = handlesOf(drawing, tool, "pocket", 1).find((h) => h.key === key);
    if (!handle) throw new Error(`no handle ${key}`);
    return reduce(startHistory(drawing), handle.move(to) as DrawingAction).present;
  };

  test("a corner moves, a middle puts in a corner there", () => {
    expect(apply("move", "pocket-1", { x: 700, y: 111 }).marks[0]?.shape).toMatchObject({
      points: [{ x: 600 }, { x: 700, y: 111 }, { x: 880 }],
    });
    expect(apply("move", "pocket-between-2", { x: 650, y: 480 }).marks[0]?.shape).toMatchObject({
      points: [{ x: 600 }, { x: 900 }, { x: 880 }, { x: 650, y: 480 }],
    });
  });

  test("an end of the scale moves and the stated length stays", () => {
    expect(apply("scale", "scale-1", { x: 280, y: 700 }).scale).toEqual({
      kind: "two-points",
      a: { x: 10, y: 700 },
      b: { x: 280, y: 700 },
      lengthMm: 25,
    });
  });

  test("the weld line's middle can be taken out, and then no more", () => {
    const middle = handlesOf(drawing, "weld-line", null, 1)[1];
    const shorter = reduce(startHistory(drawing), middle!.remove! as DrawingAction).present;
    expect(shorter.weldLine).toEqual([drawing.weldLine![0], drawing.weldLine![2]]);
    expect(handlesOf(shorter, "weld-line", null, 1).map((h) => h.remove)).toEqual([null, null]);
  });

  test("a triangle's corners cannot be taken out; drawing tools have no handles", () => {
    const corners = handlesOf(drawing, "move", "pocket", 1).filter((h) => h.role === "point");
    expect(corners.map((h) => h.remove)).toEqual([null, null, null]);
    expect(handlesOf(drawing, "line", "pocket", 1)).toEqual([]);
  });

  test("a corner wins over a middle that is as near; nothing beyond reach", () => {
    const handles = handlesOf(drawing, "move", "pocket", 1);
    expect(handleAt(handles, { x: 610, y: 305 }, 22)?.key).toBe("pocket-0");
    expect(handleAt(handles, { x: 640, y: 340 }, 22)).toBeNull();
  });
});
