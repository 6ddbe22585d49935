import { describe, expect, it } from "vitest";
import { progress, type ProgressBead } from "@/lib/course";

const tee = { joint: "tee", position: "flat", electrodeClass: "E71T-11" };
const bead = (beadId: string, more: Partial<ProgressBead>): ProgressBead => ({
  beadId,
  exerciseId: "lap",
  likeness: tee,
  imperfections: [],
  lookedFor: [],
  verdict: null,
  score: null,
  ...more,
});

describe("a student's beads in order", () => {
  it("tells gone from nobody looked", () => {
    const [first, second] = progress([
      bead("1", { imperfections: ["undercut", "overlap", "surface-porosity"] }),
      bead("2", { imperfections: ["overlap", "overlap", "spatter"], lookedFor: ["undercut"] }),
    ]);
    expect(first).toMatchObject({ before: null, gone: [], fresh: [] });
    expect(second).toMatchObject({
      before: "1",
      gone: ["undercut"],
      notLooked: ["surface-porosity"],
      stayed: ["overlap"],
      fresh: ["spatter"],
    });
  });

  it.each([
    ["another joint", { ...tee, joint: "surface" }],
    ["another position", { ...tee, position: "overhead" }],
    ["another wire", { ...tee, electrodeClass: "E71T-GS" }],
    ["a joint nobody said", { ...tee, joint: null }],
  ])("compares a bead with none of %s, and with the last one alike", (_, likeness) => {
    const steps = progress([
      bead("1", { imperfections: ["undercut"] }),
      bead("2", { likeness, lookedFor: ["undercut"] }),
      bead("3", { imperfections: ["undercut"] }),
    ]);
    expect(steps.map(({ before }) => before)).toEqual([null, null, "1"]);
    expect(steps[1]?.gone).toEqual([]);
  });

  it("two beads of which nobody said the joint are not alike for that", () => {
    const likeness = { ...tee, joint: null };
    expect(progress([bead("1", { likeness }), bead("2", { likeness })])[1]?.before).toBeNull();
  });

  it("counts tries within an exercise, and compares scores of one rubric alone", () => {
    const steps = progress([
      bead("1", { score: 0.5 }),
      bead("2", { exerciseId: "tee", score: 0.25 }),
      bead("3", { exerciseId: "tee", score: 0.75 }),
      bead("4", { exerciseId: null }),
    ]);
    expect(steps.map(({ attempt }) => attempt)).toEqual([1, 1, 2, null]);
    expect(steps.map(({ before }) => before)).toEqual([null, "1", "2", "3"]);
    expect(steps.map(({ scoreChange }) => scoreChange)).toEqual([null, null, 0.5, null]);
  });

  it.each([
    ["reject", "accept", "better"],
    ["accept", "reject", "worse"],
    ["reject", "reject", "same"],
    ["cannot-say", "accept", null],
    [null, "accept", null],
  ] as const)("%s then %s is %s", (before, now, expected) => {
    expect(progress([bead("1", { verdict: before }), bead("2", { verdict: now })])[1]?.verdict).toBe(
      expected,
    );
  });
});
