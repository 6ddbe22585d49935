import { describe, expect, it } from "vitest";
import { appearances, imperfectionIds, tellApart, tradeTables } from "@/lib/trade";

describe("what is taken for what", () => {
  it("tells every kind from at least one other, and nothing from itself", () => {
    for (const id of imperfectionIds) {
      const told = tellApart(id);
      expect([id, told.length > 0]).toEqual([id, true]);
      expect(told.map(({ other }) => other)).not.toContain(id);
    }
  });

  it("has each pair once, and tells it from both sides with the words exchanged", () => {
    const keys = tradeTables.lookAlikes.map(({ pair }) => [...pair].toSorted().join(" "));
    expect(new Set(keys).size).toBe(keys.length);
    for (const id of imperfectionIds)
      for (const here of tellApart(id)) {
        const there = tellApart(here.other).find(({ other }) => other === id);
        expect(there).toMatchObject({ test: here.test, ifThis: here.ifOther, ifOther: here.ifThis });
      }
  });

  it("says what to do and what is then seen in whole sentences", () => {
    for (const { pair, test, seen } of tradeTables.lookAlikes) {
      expect(new Set(seen).size).toBe(2);
      for (const words of [test, ...seen])
        expect([pair, words]).toEqual([pair, expect.stringMatching(/^[A-Z].*\.$/)]);
    }
  });

  it("puts every kind under something an eye sees, so that whoever is not sure comes to each", () => {
    const reached = new Set(appearances.flatMap(({ kinds }) => kinds));
    expect(imperfectionIds.filter((id) => !reached.has(id))).toEqual([]);
    for (const { kinds } of appearances) expect(new Set(kinds).size).toBe(kinds.length);
  });
});
