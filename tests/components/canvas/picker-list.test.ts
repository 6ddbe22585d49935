import { describe, expect, it } from "vitest";
import { pickerGroups, pickerHint } from "@/components/canvas/picker-list";
import type { ImperfectionId } from "@/lib/trade";

const found = (typed: string): readonly ImperfectionId[] =>
  pickerGroups(typed, undefined, []).flatMap(({ rows }) => rows.map(({ id }) => id));

describe("words of the shop", () => {
  // Common practice, no source: what welders call them.
  it.each<[string, ImperfectionId]>([
    ["rollover", "overlap"],
    ["roll over", "overlap"],
    ["blowhole", "surface-porosity"],
    ["blow hole", "surface-porosity"],
    ["LOF", "lack-of-fusion"],
    ["burn thru", "burn-through"],
    ["ropy", "convex-bead"],
    ["lumpy", "irregular-surface"],
    ["humping", "irregular-surface"],
    ["warped", "angular-misalignment"],
    ["sag", "sagging"],
  ])("%s finds it first", (typed, id) => {
    expect(found(typed)[0]).toBe(id);
  });

  it("a blow hole is no burn-through, although that is a hole blown through", () => {
    expect(found("blow hole")).toEqual(["surface-porosity"]);
    expect(found("hole")).toContain("burn-through");
  });

  it("soot is no mark, and the search says where it belongs", () => {
    expect(found("soot")).toEqual([]);
    expect(pickerHint("soot")).toMatch(/Causes/);
    expect(pickerHint("sadness")).not.toMatch(/Causes/);
  });

  it("still finds by look and by number", () => {
    expect(found("herringbone")).toEqual(["wormhole"]);
    expect(found("5011")).toEqual([]);
    expect(found("501")).toContain("undercut");
  });
});
