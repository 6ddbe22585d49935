import { describe, expect, it } from "vitest";
import { beginsPart, edgeInHand, toolOfStep } from "@/components/bead/use-section-desk";
import { startWork, toContent, work, type WorkState } from "@/components/bead/work-state";
import { canonicalJson } from "@/lib/base";
import { emptyBeadContent } from "@/lib/assess";
import { newMark } from "@/lib/marks";
import type { RunSetup } from "@/lib/setup";
import { emptyFillet, facts, meltedFillet, sectionBead } from "../../lib/assess/section-bead";

const begin = (section = null as typeof meltedFillet | null): WorkState =>
  startWork(sectionBead(section), facts);
const section = (state: WorkState) => toContent(state).photos[0]?.section;
const undo = { type: "draw", photoId: "p1", action: { type: "undo" } } as const;
const redo = { type: "draw", photoId: "p1", action: { type: "redo" } } as const;
const outline = {
  type: "section",
  photoId: "p1",
  action: { type: "section.outline", points: meltedFillet.outline },
} as const;
const pore = newMark("m1", "surface-porosity", { kind: "point", at: { x: 5, y: 5 }, radius: 3 });
const mark = { type: "draw", photoId: "p1", action: { type: "mark.add", mark: pore } } as const;

describe("a section on the workbench", () => {
  it("begins with the first thing drawn, on the joint that the set-up names", () => {
    expect(section(begin())).toBeUndefined();
    expect(section(work(begin(), outline))).toEqual({ ...emptyFillet, outline: meltedFillet.outline });
  });

  it("begins with the joint where the set-up names none, and with nothing else", () => {
    const unknown = work(begin(), { type: "setup", setup: { ...begin().setup, joint: null } });
    expect(work(unknown, outline)).toBe(unknown);
    const joint = {
      type: "section",
      photoId: "p1",
      action: { type: "section.joint", joint: "butt" },
    } as const;
    expect(section(work(unknown, joint))?.joint).toBe("butt");
  });

  it("is undone in one line with marks and scale: last done, first undone", () => {
    const done = [outline, mark].reduce(work, begin());
    const one = work(done, undo);
    expect([section(one) !== undefined, toContent(one).photos[0]!.drawing.marks.length]).toEqual([true, 0]);
    const two = work(one, undo);
    expect(section(two)).toBeUndefined();
    expect(toContent([redo, redo].reduce(work, two))).toEqual(toContent(done));
  });

  it("an action that changes nothing is no step", () => {
    const state = begin(meltedFillet);
    expect(work(state, outline)).toBe(state);
  });

  it("leaves no trace in a bead that has none, and comes back as it was saved", () => {
    const text = canonicalJson(toContent(begin()));
    expect(text).not.toContain('"section":');
    expect(text).toBe(canonicalJson(sectionBead(null)));
    expect(toContent(begin(meltedFillet))).toEqual(sectionBead(meltedFillet));
  });
});

describe("what comes next by itself", () => {
  it("only when a part was drawn that was not there", () => {
    expect(beginsPart(emptyFillet, outline.action)).toBe(true);
    expect(beginsPart(meltedFillet, outline.action)).toBe(false);
    expect(beginsPart(emptyFillet, { type: "section.lookedFor", lookedFor: [] })).toBe(false);
  });

  it("takes the edge that is picked, else the first still missing", () => {
    expect(edgeInHand(emptyFillet, null)).toBe("plate-1");
    expect(edgeInHand({ ...meltedFillet, edges: meltedFillet.edges.slice(0, 1) }, null)).toBe("plate-2");
    expect(edgeInHand(emptyFillet, "plate-2")).toBe("plate-2");
    expect(edgeInHand(emptyFillet, "groove-1")).toBe("plate-1");
  });

  it("has a tool for each step", () => {
    expect(toolOfStep({ kind: "outline" })).toBe("metal");
    expect(toolOfStep({ kind: "edge", role: "face" })).toBe("edge");
    expect(toolOfStep(null)).toBe("move");
  });
});

describe("the set-ups before", () => {
  const start = () => startWork(emptyBeadContent, []);
  const set = (state: WorkState, change: Partial<RunSetup>) =>
    work(state, { type: "setup", setup: { ...state.setup, ...change } });
  const undo = (state: WorkState) => work(state, { type: "setup.undo" });

  it("come back one press at a time, whatever pressed them in", () => {
    const planned = set(start(), { volts: 17, process: "FCAW-S" });
    const other = set(planned, { volts: 27, wireFeedMPerMin: 8, process: "GMAW" });
    expect(undo(other).setup).toEqual(planned.setup);
    expect(undo(undo(other)).setup).toEqual(start().setup);
    expect(undo(undo(undo(other)))).toEqual(undo(undo(other)));
  });

  it("count the letters of one number as one", () => {
    const typed = [1, 17, 17.5].reduce((state, volts) => set(state, { volts }), start());
    expect(typed.setupsBefore).toHaveLength(1);
    expect(undo(typed).setup.volts).toBeNull();
    expect(set(typed, { amps: 120 }).setupsBefore).toHaveLength(2);
  });

  it("are not saved", () => {
    expect(Object.keys(toContent(set(start(), { volts: 17 })))).not.toContain("setupsBefore");
  });
});
