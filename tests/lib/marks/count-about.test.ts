import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { canonicalJson } from "@/lib/base";
import {
  countAbout,
  emptyDrawing,
  newMark,
  reduce,
  startHistory,
  type DrawingAction,
  type History,
} from "@/lib/marks";
import { DrawingSchema } from "@/lib/marks/drawing";
import { comesInNumbers, imperfectionIds } from "@/lib/trade";
import { arbDrawing } from "../../arbitraries";

const round = { kind: "point", at: { x: 10, y: 10 }, radius: 5 } as const;
const one = { ...emptyDrawing, marks: [newMark("a", "surface-porosity", round)] };
const after = (...actions: readonly DrawingAction[]): History =>
  actions.reduce<History>((history, action) => reduce(history, action), startHistory(one));
const describeIt = (aboutCount: number | undefined): DrawingAction => ({
  type: "mark.describe",
  id: "a",
  about: { aboutCount },
});

describe("about how many a mark holds", () => {
  it("is said, changed and taken back, a step each, and leaves nothing behind", () => {
    const said = after(describeIt(20));
    expect(said.present.marks[0]?.aboutCount).toBe(20);
    expect(said.past.length).toBe(1);
    const back = after(describeIt(20), describeIt(undefined));
    expect(canonicalJson(back.present)).toBe(canonicalJson(one));
    expect(Object.keys(back.present.marks[0]!)).not.toContain("aboutCount");
    expect(reduce(said, { type: "undo" }).present).toEqual(one);
  });

  it("is refused where it is no count of several", () => {
    for (const wrong of [0, 1, 2.5, -3, 10_001, NaN]) expect(after(describeIt(wrong)).present).toBe(one);
  });

  it("goes with the name of what comes in numbers", () => {
    const renamed = after(describeIt(20), {
      type: "mark.setImperfection",
      id: "a",
      imperfection: "undercut",
    });
    expect(renamed.present.marks[0]).toEqual(newMark("a", "undercut", round));
    const spatter = after(describeIt(20), { type: "mark.setImperfection", id: "a", imperfection: "spatter" });
    expect(countAbout(spatter.present.marks[0]!)).toBe(20);
  });

  it("counts for nothing at a kind that does not, whoever wrote it there", () => {
    for (const id of imperfectionIds)
      expect(countAbout({ ...newMark("a", id, round), aboutCount: 7 })).toBe(comesInNumbers(id) ? 7 : null);
  });

  it("law: a drawing without one is read and written as before, byte for byte", () => {
    fc.assert(
      fc.property(arbDrawing, (drawing) => {
        const marks = drawing.marks.map(({ aboutCount: _, ...mark }) => mark);
        const before = canonicalJson({ ...drawing, marks });
        expect(canonicalJson(DrawingSchema.parse(JSON.parse(before)))).toBe(before);
      }),
      { seed: 3, numRuns: 40 },
    );
  });
});
