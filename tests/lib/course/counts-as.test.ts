import { describe, expect, it } from "vitest";
import { countsAs, editLayer, foundByLayers, startLayer, type LayerItem } from "@/lib/course";
import { imperfectionIds, imperfections } from "@/lib/trade";

const arrow: LayerItem = { id: "a", kind: "arrow", from: { x: 0, y: 0 }, to: { x: 9, y: 0 }, words: "" };

describe("what an instructor's words count as", () => {
  it.each(imperfectionIds)("%s by its name, with more behind it", (id) => {
    const { name } = imperfections[id];
    expect(countsAs(name)).toBe(id);
    expect(countsAs(`${name.toUpperCase()}: shorten the arc`)).toBe(id);
  });

  it.each([
    "Undercut gone, well done",
    "No undercut here",
    "Undercutting is next week",
    "Slower at the end",
    "Here was undercut",
    "",
  ])("nothing: %s", (words) => {
    expect(countsAs(words)).toBeNull();
  });

  it("is kept with the item, goes with the words, and can be taken off", () => {
    const put = editLayer(startLayer([arrow]), { type: "words", id: "a", words: "Undercut here" });
    expect(put.present[0]).toMatchObject({ imperfection: "undercut" });
    const layers = [{ photoId: "p", items: [...put.present, { ...arrow, id: "b" }] }];
    expect(foundByLayers([...layers, ...layers])).toEqual(["undercut"]);
    const off = editLayer(put, { type: "uncount", id: "a" });
    expect(off.present[0]).toEqual({ ...arrow, words: "Undercut here" });
    const other = editLayer(put, { type: "words", id: "a", words: "Even" });
    expect(other.present[0]).toEqual({ ...arrow, words: "Even" });
  });
});
