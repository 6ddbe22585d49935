import { describe, expect, it } from "vitest";
import { nothingOffered, pickerGroups, pickerHint } from "@/components/canvas/picker-groups";
import { imperfectionIds, imperfections, type ImperfectionId } from "@/lib/trade";

const found = (typed: string): readonly ImperfectionId[] =>
  pickerGroups(typed, undefined, nothingOffered).flatMap(({ rows }) => rows);

describe("the list of the picker", () => {
  it("shows what was found in its order, the likeliest first, and nothing besides", () => {
    expect(pickerGroups("rollover", "point", nothingOffered)).toEqual([
      { key: "found", name: "Found", rows: ["overlap"] },
    ]);
    expect(found("LOF")[0]).toBe("lack-of-fusion");
    expect(found("xyzzy")).toEqual([]);
  });

  it("holds every kind once in its group while nothing is typed, those drawn with this shape first", () => {
    for (const shape of ["point", "line", "outline"] as const) {
      const groups = pickerGroups("", shape, nothingOffered);
      expect(groups.flatMap(({ rows }) => rows).toSorted()).toEqual([...imperfectionIds].toSorted());
      for (const { rows } of groups) {
        const drawnSo = rows.map((id) => imperfections[id].usualShape === shape);
        expect(drawnSo).toEqual(drawnSo.toSorted((a, b) => Number(b) - Number(a)));
      }
    }
  });

  it("puts what the bead shows before what its causes would leave, five at most, drawn with this shape", () => {
    const offer = {
      onBead: ["spatter", "undercut"],
      likely: [
        "convex-bead",
        "surface-porosity",
        "overlap",
        "undercut",
        "trapped-slag",
        "wormhole",
        "underfill",
      ],
    } as const;
    expect(pickerGroups("", "line", offer)[0]).toEqual({
      key: "likely",
      name: "Most likely here",
      rows: ["undercut", "convex-bead", "overlap", "trapped-slag", "wormhole"],
    });
    expect(pickerGroups("", "outline", { onBead: ["undercut"], likely: [] })[0]?.rows).toEqual(["undercut"]);
    expect(pickerGroups("", "line", nothingOffered)[0]?.key).not.toBe("likely");
  });

  it("says that soot is no mark of its own, although it finds what lies under it, and helps where nothing is found", () => {
    expect(found("soot")[0]).toBe("surface-porosity");
    expect(pickerHint("soot")).toMatch(/Causes/);
    expect(pickerHint("sadness")).toMatch(/not sure/);
    expect(pickerHint("undercut")).toBe("");
    expect(pickerHint("")).toBe("");
  });
});
