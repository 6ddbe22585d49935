import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { scoreBead, type EyeMark } from "@/lib/eye/score-bead";
import { imperfectionIds } from "@/lib/trade";
import { inDepth } from "../../setup/in-depth";
import { drawnBead, fault, squareAt } from "./eye";

const mark = (kind: EyeMark["kind"], x: number, y: number, sizeMm: number | null = null): EyeMark => ({
  at: { x, y },
  kind,
  sizeMm,
});
const nothing = { found: [], missed: [], misnamed: [], falseCalls: [], missized: [] };

describe("what was seen against what is there", () => {
  const bead = drawnBead([fault("undercut", 200, 200), fault("surface-porosity", 700, 400)]);

  it("found, missed, named wrongly, seen where nothing is", () => {
    expect(
      scoreBead(bead, { marks: [mark("undercut", 200, 200), mark("surface-porosity", 700, 400)] }),
    ).toEqual({
      ...nothing,
      found: ["undercut", "surface-porosity"],
    });
    expect(scoreBead(bead, { marks: [] })).toEqual({ ...nothing, missed: ["undercut", "surface-porosity"] });
    expect(scoreBead(bead, { marks: [mark("overlap", 205, 210), mark("spatter", 900, 700)] })).toEqual({
      ...nothing,
      missed: ["surface-porosity"],
      misnamed: [{ is: "undercut", called: "overlap" }],
      falseCalls: ["spatter"],
    });
  });

  it("a fingertip beside it is still on it, a hand's breadth is not", () => {
    // The outline ends at x = 220; a fiftieth of the width is 20 pixels.
    expect(scoreBead(bead, { marks: [mark("undercut", 239, 200)] }).found).toEqual(["undercut"]);
    expect(scoreBead(bead, { marks: [mark("undercut", 241, 200)] })).toMatchObject({
      found: [],
      falseCalls: ["undercut"],
    });
  });

  it("twenty marks on one kind are one find, and one on another of the kind is enough", () => {
    const many = drawnBead([1, 2, 3, 4, 5].map((i) => fault("surface-porosity", 150 * i, 300)));
    expect(scoreBead(many, { marks: [mark("surface-porosity", 450, 300)] })).toEqual({
      ...nothing,
      found: ["surface-porosity"],
    });
  });

  it("what was found is not named wrongly as well, however often the spot was marked", () => {
    const both = [mark("overlap", 205, 210), mark("undercut", 200, 200), mark("overlap", 195, 200)];
    expect(scoreBead(bead, { marks: both })).toMatchObject({
      found: ["undercut"],
      misnamed: [],
      falseCalls: [],
    });
    expect(scoreBead(bead, { marks: [both[0]!, both[2]!] }).misnamed).toEqual([
      { is: "undercut", called: "overlap" },
    ]);
  });

  it("the bead's whole shape is found by its name and catches no other mark", () => {
    const whole = { whole: true, outlinePx: squareAt(500, 375, 700), sizes: { widthMm: 17 } };
    const wide = drawnBead([fault("flat-wide-bead", 500, 375, whole)]);
    expect(scoreBead(wide, { marks: [mark("flat-wide-bead", 400, 300)] }).found).toEqual(["flat-wide-bead"]);
    expect(scoreBead(wide, { marks: [mark("undercut", 400, 300)] })).toMatchObject({
      misnamed: [],
      falseCalls: ["undercut"],
    });
  });

  it("what is too small to be seen is neither missed nor a false call", () => {
    const tiny = drawnBead([fault("spatter", 300, 300, { sizes: { diameterMm: 0.4 } })]);
    expect(scoreBead(tiny, { marks: [] })).toEqual(nothing);
    expect(scoreBead(tiny, { marks: [mark("spatter", 300, 300)] })).toMatchObject({
      found: ["spatter"],
      falseCalls: [],
    });
  });

  it.each([
    [13.5, false],
    [13.6, true],
    [6.5, false],
    [6.4, true],
  ])("10 mm called %f: sized wrongly %s", (said, wrong) => {
    const { missized } = scoreBead(bead, { marks: [mark("undercut", 200, 200, said)] });
    expect(missized).toEqual(wrong ? [{ kind: "undercut", isMm: 10, saidMm: said }] : []);
  });

  it("law: what is asked for is found, missed or named wrongly, and no kind is two of these", () => {
    const kind = fc.constantFrom(...imperfectionIds.slice(0, 6));
    const spot = fc.record({
      x: fc.integer({ min: 0, max: 1000 }),
      y: fc.integer({ min: 0, max: 750 }),
      kind,
    });
    fc.assert(
      fc.property(fc.array(spot, { maxLength: 6 }), fc.array(spot, { maxLength: 8 }), (there, seen) => {
        const some = drawnBead(there.map(({ kind: one, x, y }) => fault(one, x, y)));
        const score = scoreBead(some, { marks: seen.map(({ kind: one, x, y }) => mark(one, x, y)) });
        const asked = new Set(there.map(({ kind: one }) => one));
        for (const one of asked) {
          const places = [
            score.found.includes(one),
            score.missed.includes(one),
            score.misnamed.some(({ is }) => is === one),
          ];
          expect(places.filter(Boolean)).toHaveLength(1);
        }
        for (const one of [...score.found, ...score.missed]) expect(asked).toContain(one);
        // Naming everything right finds everything.
        const right = scoreBead(some, { marks: there.map(({ kind: one, x, y }) => mark(one, x, y)) });
        expect(right).toMatchObject({ missed: [], misnamed: [], falseCalls: [] });
      }),
      { numRuns: inDepth(100, 3000), seed: 18 },
    );
  });
});
