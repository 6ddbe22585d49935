import { describe, expect, it } from "vitest";
import { markOf } from "@/components/bead/use-spots";
import { emptyDrawing, MarkSchema, reduce, startHistory } from "@/lib/marks";

const spot = { at: { x: 120.123, y: 88.98 }, radiusPx: 7.77, sure: 0.8 } as const;

describe("a suggestion that was taken", () => {
  it.each([
    ["hole", "surface-porosity"],
    ["spatter", "spatter"],
  ] as const)("is a round mark of a %s that says where it came from", (kind, imperfection) => {
    const mark = markOf({ kind, ...spot }, "m");
    expect(MarkSchema.parse(mark)).toEqual(mark);
    expect(mark).toMatchObject({ imperfection, origin: "suggested", gauge: [], note: "" });
    expect(mark.shape).toEqual({ kind: "point", at: { x: 120.1, y: 89 }, radius: 7.8 });
  });

  it("is moved, named anew and removed as any other, and keeps where it came from", () => {
    const first = reduce(startHistory(emptyDrawing), {
      type: "mark.add",
      mark: markOf({ kind: "hole", ...spot }, "m"),
    });
    const named = reduce(first, { type: "mark.setImperfection", id: "m", imperfection: "wormhole" });
    expect(named.present.marks[0]).toMatchObject({ imperfection: "wormhole", origin: "suggested" });
    expect(reduce(named, { type: "mark.remove", id: "m" }).present.marks).toEqual([]);
    expect(reduce(first, { type: "undo" }).present.marks).toEqual([]);
  });
});
