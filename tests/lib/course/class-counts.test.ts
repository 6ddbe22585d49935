import { describe, expect, it } from "vitest";
import { classCounts, intervalText, shareText, type ClassBead } from "@/lib/course";
import { shareOf } from "@/lib/trends";

let next = 0;
const bead = (student: string, imperfections: ClassBead["imperfections"], more: Partial<ClassBead> = {}) => {
  next += 1;
  return {
    handInId: `h${next}`,
    beadId: `b${next}`,
    student,
    exerciseId: "e",
    imperfections,
    looked: true,
    cause: null,
    verdict: null,
    returned: false,
    score: null,
    ...more,
  } satisfies ClassBead;
};
const long = { id: "ctwd-long", name: "Stick-out too long" };
const fast = { id: "travel-fast", name: "Travel too fast" };

describe("a class in numbers", () => {
  it("counts an imperfection once a bead, largest first", () => {
    const counts = classCounts([
      bead("ada", ["undercut", "undercut", "undercut"]),
      bead("bo", ["surface-porosity"]),
      bead("cy", ["undercut", "surface-porosity"]),
      bead("cy", ["undercut"]),
    ]);
    expect(counts.wrong.map(({ key, share }) => [key, share.count, share.of])).toEqual([
      ["undercut", 3, 4],
      ["surface-porosity", 2, 4],
    ]);
    expect(counts).toMatchObject({ beads: 4, students: 3 });
    expect(counts.clean).toMatchObject({ count: 0, of: 4 });
  });

  it("judges only what was judged", () => {
    const counts = classCounts([
      bead("a", [], { verdict: "accept" }),
      bead("b", []),
      bead("c", [], { verdict: "reject" }),
      bead("d", [], { verdict: "cannot-say" }),
    ]);
    expect(counts.meets).toMatchObject({ count: 1, of: 2 });
  });

  it("names a cause that came first twice on one student's beads, never one of two students", () => {
    const counts = classCounts([
      bead("ada", ["undercut"], { cause: long }),
      bead("bo", ["undercut"], { cause: fast }),
      bead("ada", ["undercut"], { cause: long }),
      bead("cy", ["undercut"], { cause: fast }),
    ]);
    expect(counts.repeats).toMatchObject([{ student: "ada", causeId: "ctwd-long", times: 2, of: 2 }]);
    expect(counts.causes.map(({ key, share }) => [key, share.count])).toEqual([
      ["ctwd-long", 2],
      ["travel-fast", 2],
    ]);
  });

  it("does not take a bead nobody looked over for a clean one", () => {
    const counts = classCounts([bead("a", ["undercut"]), bead("b", []), bead("c", [], { looked: false })]);
    expect(counts).toMatchObject({ beads: 3, looked: 2 });
    expect(counts.clean).toMatchObject({ count: 1, of: 2 });
    expect(counts.wrong[0]?.share).toMatchObject({ count: 1, of: 2 });
  });

  it("says nothing of nothing", () => {
    const none = classCounts([]);
    expect(none).toMatchObject({ beads: 0, students: 0, wrong: [], repeats: [] });
    expect(shareText(none.clean)).toBe("0 of 0");
    expect(intervalText(none.clean)).toBe("");
  });
});

describe("a share in words", () => {
  it("gives no percentage of a few beads, and its interval always", () => {
    expect(shareText(shareOf(2, 3))).toBe("2 of 3");
    expect(shareText(shareOf(10, 20))).toBe("10 of 20 (50 %)");
    // Newcombe 1998, Statistics in Medicine 17, 857-872, table I, method 3: 15 of 148 gives 0.0624 to 0.1605.
    expect(intervalText(shareOf(15, 148))).toBe("95 % interval 6 to 17 in 100");
  });
});
