import { describe, expect, it } from "vitest";
import { progress, type ProgressBead } from "@/lib/course";

const bead = (beadId: string, more: Partial<ProgressBead>): ProgressBead => ({
  beadId,
  exerciseId: "lap",
  imperfections: [],
  lookedFor: [],
  verdict: null,
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

  it("compares beads of one exercise with each other", () => {
    const steps = progress([bead("1", {}), bead("2", { exerciseId: "tee" }), bead("3", {})]);
    expect(steps.map(({ before }) => before)).toEqual([null, null, "1"]);
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
