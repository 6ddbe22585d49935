import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { diagnoseTables, likelyMarks, usualCauses, whyCauseless } from "@/lib/diagnose";
import { imperfectionIds, processes } from "@/lib/trade";

const { causeLinks, causes } = diagnoseTables;
const ofProcess = fc.constantFrom(...processes, null);

describe("what usually causes an imperfection", () => {
  it("law: is what the link tables tie to it in that process, each cause once, the most named first", () => {
    fc.assert(
      fc.property(fc.constantFrom(...imperfectionIds), ofProcess, (id, process) => {
        const told = usualCauses(id, process);
        const tied = causeLinks.filter(
          (link) => link.imperfection === id && (process === null || link.processes.includes(process)),
        );
        expect(told.map((one) => one.id).toSorted()).toEqual(
          [...new Set(tied.map(({ cause }) => cause))].toSorted(),
        );
        const ranks = told.map(({ weight }) => ["strong", "middling", "weak"].indexOf(weight));
        expect(ranks).toEqual(ranks.toSorted((a, b) => a - b));
        for (const { because, weight, sources } of told) {
          expect(tied.some((link) => link.because === because && link.weight === weight)).toBe(true);
          expect(sources.length).toBeGreaterThan(0);
        }
      }),
      { seed: 5, numRuns: 300 },
    );
  });

  it("says something of every kind: a cause, or why it has none", () => {
    for (const id of imperfectionIds)
      expect([id, usualCauses(id, null).length > 0 || whyCauseless(id) !== null]).toEqual([id, true]);
  });

  it("names the principal cause of undercut as the trade's texts do", () => {
    // Travel too fast: named first in Job Knowledge 67 (The Welding Institute) and in the MIG Handbook, section 10.
    expect(usualCauses("undercut", "GMAW")[0]?.id).toBe("travel-fast");
  });
});

describe("what causes would leave", () => {
  it("law: more of a cause never moves what it leaves down past what it does not", () => {
    const some = fc.array(fc.double({ min: 0, max: 0.6, noNaN: true }), {
      minLength: causes.length,
      maxLength: causes.length,
    });
    fc.assert(
      fc.property(some, fc.nat(causes.length - 1), ofProcess, (chances, raised, process) => {
        const at = causes.map(({ id }, i) => ({ id, probability: chances[i]! }));
        const more = at.map((one, i) => (i === raised ? { ...one, probability: 0.95 } : one));
        const [before, after] = [likelyMarks(at, process), likelyMarks(more, process)];
        expect(after.toSorted()).toEqual(before.toSorted());
        const leaves = new Set(
          causeLinks
            .filter(
              ({ cause, processes: some }) =>
                cause === causes[raised]!.id && (process === null || some.includes(process)),
            )
            .map(({ imperfection }) => imperfection),
        );
        for (const mine of leaves)
          for (const other of before.filter((id) => !leaves.has(id)))
            if (before.indexOf(mine) < before.indexOf(other))
              expect(after.indexOf(mine)).toBeLessThan(after.indexOf(other));
      }),
      { seed: 6, numRuns: 60 },
    );
  });

  it("puts pores and spatter before undercut where the polarity is wrong for sure", () => {
    const ids = likelyMarks([{ id: "polarity", probability: 1 }], "FCAW-S");
    expect(ids).toContain("surface-porosity");
    expect(ids.indexOf("surface-porosity")).toBeLessThan(3);
    expect(ids).not.toContain("undercut");
  });
});
