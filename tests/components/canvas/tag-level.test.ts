import { describe, expect, it } from "vitest";
import { nextTagLevel, tagLevels, withTags } from "@/components/canvas/tag-level";
import { emptyDrawing, newMark, scene } from "@/lib/marks";

const drawing = {
  ...emptyDrawing,
  scale: { kind: "two-points" as const, a: { x: 0, y: 0 }, b: { x: 100, y: 0 }, lengthMm: 25 },
  marks: ["a", "b"].map((id, i) =>
    newMark(id, "undercut", { kind: "point", at: { x: 200 + 90 * i, y: 300 }, radius: null }),
  ),
};
const shapes = scene(drawing, { labels: () => "Undercut 2 mm" });
const kinds = (level: (typeof tagLevels)[number], selected: string | null, of: string) =>
  withTags(shapes, level, selected)
    .filter(({ markId }) => markId === of)
    .map(({ kind }) => kind);

describe("labels on, short, off", () => {
  it("hides words, then numbers too, and never the mark itself or the scale", () => {
    expect(kinds("words", null, "a")).toEqual(["spot", "badge", "label"]);
    expect(kinds("numbers", null, "a")).toEqual(["spot", "badge"]);
    expect(kinds("none", null, "a")).toEqual(["spot"]);
    const ofNone = (level: (typeof tagLevels)[number]) =>
      withTags(shapes, level, null).filter(({ markId }) => markId === null).length;
    expect(ofNone("none")).toBe(ofNone("words"));
    expect(ofNone("none")).toBeGreaterThan(0);
  });

  it("leaves the tags of the one that is picked", () => {
    expect(kinds("none", "b", "b")).toEqual(["spot", "badge", "label"]);
    expect(kinds("none", "b", "a")).toEqual(["spot"]);
  });

  it("comes round to where it began", () => {
    for (const level of tagLevels) expect(nextTagLevel(nextTagLevel(nextTagLevel(level)))).toBe(level);
    expect(new Set(tagLevels.map(nextTagLevel)).size).toBe(3);
  });
});
