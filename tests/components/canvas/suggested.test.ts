import { describe, expect, it, vi } from "vitest";
import { pickAt, ringAt, suggestedPicture } from "@/components/canvas/suggested";
import type { Scenery } from "@/components/canvas/gesture";
import { emptyDrawing, newMark, scene } from "@/lib/marks";

const rings = [
  { id: "a", at: { x: 100, y: 100 }, radius: 10 },
  { id: "b", at: { x: 130, y: 100 }, radius: 4 },
];
const pore = newMark("pore", "surface-porosity", { kind: "point", at: { x: 300, y: 100 }, radius: 12 });
const drawing = { ...emptyDrawing, marks: [pore] };

function tapAt(x: number, y: number, given = rings) {
  const [select, onTake] = [vi.fn(), vi.fn()];
  const scenery: Scenery = {
    tool: "move",
    draft: null,
    drawing,
    shapes: scene(drawing, { labels: () => "" }),
    handles: [],
    selectedId: null,
    unitPx: 1,
    suggested: { rings: given, onTake },
  };
  pickAt(scenery, select, { x, y }, 12);
  return { selected: select.mock.calls[0]?.[0] as unknown, taken: onTake.mock.calls[0]?.[0] as unknown };
}

describe("a suggested ring", () => {
  it("is taken by one tap on it or within a finger's reach, and picks nothing", () => {
    expect(tapAt(104, 103)).toEqual({ selected: undefined, taken: "a" });
    expect(tapAt(130, 113)).toEqual({ selected: undefined, taken: "b" });
  });

  it("never takes a tap from a mark, and a tap on nothing takes nothing", () => {
    const beside = [...rings, { id: "on the mark", at: { x: 300, y: 100 }, radius: 12 }];
    expect(tapAt(300, 100, beside)).toEqual({ selected: "pore", taken: undefined });
    expect(tapAt(500, 400)).toEqual({ selected: null, taken: undefined });
  });

  it("is the nearest of those in reach, by reach on the screen", () => {
    expect(ringAt(rings, { x: 118, y: 100 }, 12, 1)).toBe("a");
    expect(ringAt(rings, { x: 124, y: 100 }, 12, 1)).toBe("b");
    expect(ringAt(rings, { x: 150, y: 100 }, 12, 1)).toBeNull();
    expect(ringAt(rings, { x: 150, y: 100 }, 12, 2)).toBe("b");
  });

  it("is drawn dashed, and never smaller than can be seen", () => {
    const drawn = suggestedPicture({ rings }, 2);
    expect(drawn).toHaveLength(4);
    const circles = drawn.filter((one) => one.kind === "circle");
    expect(circles.map(({ radius }) => radius)).toEqual([12.5, 12.5, 12, 12]);
    // Straw in dashes on a whole ring of ink.
    expect(circles.map(({ dash }) => dash)).toEqual([[], [8, 6], [], [8, 6]]);
  });
});
