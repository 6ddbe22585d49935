import { describe, expect, it } from "vitest";
import {
  editLayer,
  itemAt,
  itemName,
  itemsOver,
  layerPrimitives,
  startLayer,
  withItems,
  type LayerItem,
} from "@/lib/course";
import { wordsAt, wrapWords } from "@/lib/course/layer-primitives";

const arrow: LayerItem = { id: "a", kind: "arrow", from: { x: 0, y: 0 }, to: { x: 100, y: 0 }, words: "" };
const text: LayerItem = { id: "t", kind: "text", at: { x: 50, y: 200 }, words: "Fill the crater" };
const ring: LayerItem = {
  id: "o",
  kind: "outline",
  points: [
    { x: 300, y: 300 },
    { x: 400, y: 300 },
    { x: 400, y: 400 },
  ],
};
const ink = { line: "#1", casing: "#2", plate: "#3", words: "#4", selected: "#5" };

describe("editing a layer", () => {
  it("adds, words, moves, removes, and every step comes back", () => {
    const steps = [
      { type: "add", item: arrow },
      { type: "add", item: text },
      { type: "words", id: "a", words: "toe" },
      { type: "move", id: "a", dx: 10, dy: 5 },
      { type: "remove", id: "t" },
    ] as const;
    const states = steps.reduce((all, step) => [...all, editLayer(all.at(-1)!, step)], [startLayer([])]);
    const last = states.at(-1)!;
    expect(last.present).toEqual([{ ...arrow, words: "toe", from: { x: 10, y: 5 }, to: { x: 110, y: 5 } }]);
    let back = last;
    for (const state of states.slice(0, -1).reverse()) {
      back = editLayer(back, { type: "undo" });
      expect(back.present).toEqual(state.present);
    }
    for (const state of states.slice(1)) {
      back = editLayer(back, { type: "redo" });
      expect(back.present).toEqual(state.present);
    }
  });

  it("is the same object when nothing happens", () => {
    const history = startLayer([arrow]);
    expect(editLayer(history, { type: "undo" })).toBe(history);
    expect(editLayer(history, { type: "remove", id: "none" })).toBe(history);
  });

  it("never leaves a text empty", () => {
    const kept = editLayer(startLayer([text]), { type: "words", id: "t", words: "  " });
    expect(kept.present[0]).toMatchObject({ words: "Fill the crater" });
  });

  it("keeps layers per photo, and none without items", () => {
    const layers = withItems(withItems([], "p1", [arrow]), "p2", [text]);
    expect(itemsOver(layers, "p1")).toEqual([arrow]);
    expect(withItems(layers, "p1", [])).toEqual([{ photoId: "p2", items: [text] }]);
    expect(itemsOver(layers, "p3")).toEqual([]);
  });
});

describe("painting a layer", () => {
  it("puts the head's point at the target and its barbs at 30 degrees", () => {
    const head = layerPrimitives([arrow], ink, 1).findLast((one) => one.kind === "path");
    if (head?.kind !== "path") throw new Error("no head");
    const [up, tip, down] = head.points;
    expect(tip).toEqual({ x: 100, y: 0 });
    for (const barb of [up!, down!])
      expect(Math.abs(Math.atan2(barb.y, 100 - barb.x))).toBeCloseTo(Math.PI / 6, 12);
    expect(up!.y).toBeCloseTo(-down!.y, 12);
  });

  it("paints words above every line, and keeps its weight at every zoom", () => {
    const kinds = layerPrimitives([text, arrow, ring], ink, 4).map(({ kind }) => kind);
    expect(kinds.lastIndexOf("path")).toBeLessThan(kinds.indexOf("plate"));
    const width = (unit: number) =>
      Math.max(...layerPrimitives([ring], ink, unit).map((one) => (one.kind === "path" ? one.width : 0)));
    expect(width(4)).toBeCloseTo(4 * width(1), 12);
  });

  it("stands an arrow's words beyond its tail", () => {
    const at = wordsAt({ ...arrow, words: "toe" }, 1);
    expect(at!.x).toBeLessThan(0);
    expect(wordsAt(arrow, 1)).toBeNull();
  });

  it("wraps at spaces and loses no word", () => {
    const words = "Keep the stick-out the same all the way along the joint";
    const lines = wrapWords(words);
    expect(lines.join(" ")).toBe(words);
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(26);
    expect(wrapWords("   ")).toEqual([]);
  });
});

describe("what lies under a finger", () => {
  it("finds lines, closed sides and words within reach, the topmost first", () => {
    const items = [arrow, text, ring];
    expect(itemAt(items, { x: 50, y: 9 }, 10, 1)?.id).toBe("a");
    expect(itemAt(items, { x: 50, y: 11 }, 10, 1)).toBeNull();
    expect(itemAt(items, { x: 350, y: 350 }, 1, 1)?.id).toBe("o");
    expect(itemAt(items, { x: 60, y: 205 }, 1, 1)?.id).toBe("t");
    expect(itemAt([arrow, { ...arrow, id: "b" }], { x: 50, y: 0 }, 1, 1)?.id).toBe("b");
  });

  it("is named for a list", () => {
    expect(itemName(arrow)).toBe("Arrow");
    expect(itemName(text)).toBe("Text: Fill the crater");
  });
});
