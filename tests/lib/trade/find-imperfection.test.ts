import { describe, expect, it } from "vitest";
import {
  findImperfections,
  imperfectionIds,
  imperfections,
  tradeTables,
  type ImperfectionId,
} from "@/lib/trade";

describe("words of the shop", () => {
  // Common practice, no source: what welders and their teachers call them.
  it.each<[string, ImperfectionId]>([
    ["rollover", "overlap"],
    ["roll over", "overlap"],
    ["Roll-Over", "overlap"],
    ["cold lap", "overlap"],
    ["blowhole", "surface-porosity"],
    ["blow hole", "surface-porosity"],
    ["pinholes", "surface-porosity"],
    ["LOF", "lack-of-fusion"],
    ["lof", "lack-of-fusion"],
    ["incomplete fusion", "lack-of-fusion"],
    ["burn thru", "burn-through"],
    ["burnthru", "burn-through"],
    ["blow-thru", "burn-through"],
    ["ropy", "convex-bead"],
    ["ropey", "convex-bead"],
    ["lumpy", "irregular-surface"],
    ["humping", "irregular-surface"],
    ["warped", "angular-misalignment"],
    ["soot", "surface-porosity"],
    ["sag", "sagging"],
    ["icicles", "excess-penetration"],
    ["suck back", "root-concavity"],
    ["hi-lo", "misalignment"],
    ["high low", "misalignment"],
    ["wagon tracks", "trapped-slag"],
    ["worm tracks", "gas-mark"],
    ["worm hole", "wormhole"],
    ["star crack", "crater-crack"],
    ["sugaring", "temper-colour"],
    ["splatter", "spatter"],
    ["undercutting", "undercut"],
    ["LOP", "incomplete-penetration"],
    ["crack", "longitudinal-crack"],
  ])("%s finds it first", (typed, id) => {
    expect(findImperfections(typed)[0]).toBe(id);
  });

  it("finds every kind first by its own name, whole or half typed, and by every name shown with it", () => {
    for (const id of imperfectionIds) {
      const { name, alsoCalled } = imperfections[id];
      for (const word of [name, name.toUpperCase(), ...alsoCalled])
        expect([word, findImperfections(word)[0]]).toEqual([word, id]);
      expect(findImperfections(name.slice(0, -2))).toContain(id);
    }
  });

  it("finds every word of the table, in the table's order", () => {
    for (const [word, ids] of Object.entries(tradeTables.shopWords)) {
      const found = findImperfections(word);
      const named = found.filter((id) => ids.includes(id));
      expect([word, named.toSorted()]).toEqual([word, [...ids].toSorted()]);
      expect([word, ids.includes(found[0]!)]).toEqual([word, true]);
    }
  });

  it("a blow hole is no burn-through, although that is a hole blown through", () => {
    expect(findImperfections("blow hole")).toEqual(["surface-porosity"]);
    expect(findImperfections("hole")).toContain("burn-through");
  });

  it("finds by ISO 6520-1 number, by look, and nothing by nothing or by nonsense", () => {
    // ISO 6520-1: 501 undercut, 506 overlap (from memory).
    expect(findImperfections("501")[0]).toBe("undercut");
    expect(findImperfections("506")).toContain("overlap");
    expect(findImperfections("belly hangs low")).toEqual(["sagging"]);
    expect(findImperfections(" ")).toEqual([]);
    expect(findImperfections("sadness")).toEqual([]);
  });
});
