import fc from "fast-check";
import { expect, it } from "vitest";
import { causeIds } from "@/lib/diagnose/cause-ids";
import { likelyMarks } from "@/lib/diagnose";
import { comesOf, imperfectionIds } from "@/lib/trade";
import { processes } from "@/lib/trade/names";

/** Common practice, no source: no tungsten without a tungsten electrode, no burnback without a wire and its tip. */
const wired = ["burnback", "copper-inclusion", "wire-stub"] as const;

it("says of tungsten and of what a contact tip leaves which processes they come of", () => {
  expect(processes.filter((process) => comesOf("tungsten-inclusion", process))).toEqual(["GTAW"]);
  for (const id of wired) {
    expect(comesOf(id, "FCAW-S")).toBe(true);
    expect(comesOf(id, "SMAW")).toBe(false);
    expect(comesOf(id, null)).toBe(false);
  }
  expect(comesOf("undercut", null)).toBe(true);
});

it("law: whatever the causes are, a kind that wants a process nobody named is never among the likely ones", () => {
  const chances = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), {
    minLength: causeIds.length,
    maxLength: causeIds.length,
  });
  fc.assert(
    fc.property(chances, fc.constantFrom(null, ...processes), (at, process) => {
      const likely = likelyMarks(
        causeIds.map((id, i) => ({ id, probability: at[i]! })),
        process,
      );
      expect(likely.filter((id) => !comesOf(id, process))).toEqual([]);
    }),
    { seed: 5, numRuns: 40 },
  );
});

it("still offers them where the process says so", () => {
  const all = causeIds.map((id) => ({ id, probability: 1 }));
  expect(likelyMarks(all, "FCAW-G")).toContain("burnback");
  expect(likelyMarks(all, "GTAW")).toContain("tungsten-inclusion");
  expect(imperfectionIds.filter((id) => !comesOf(id, null)).toSorted()).toEqual(
    [...wired, "tungsten-inclusion"].toSorted(),
  );
});
