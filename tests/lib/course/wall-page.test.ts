import { describe, expect, it } from "vitest";
import { classCounts, wallPage, type ClassBead } from "@/lib/course";

const bead = (i: number, student: string): ClassBead => ({
  handInId: `h${i}`,
  beadId: `b${i}`,
  student,
  exerciseId: "e",
  imperfections: ["undercut"],
  looked: true,
  cause: { id: "ctwd-long", name: "Stick-out too long" },
  verdict: "reject",
  returned: false,
  score: null,
});

describe("the page for the wall", () => {
  it("holds counts with their intervals and nobody's name or id", () => {
    const counts = classCounts([bead(1, "person-imke"), bead(2, "called:joss"), bead(3, "person-imke")]);
    const about = { title: "Lap", group: "Bay 3", aim: "", day: "today", handedIn: 2, members: 5 };
    const page = wallPage(counts, about);
    expect(counts.repeats).toHaveLength(1);
    expect(JSON.stringify(page)).not.toMatch(/imke|joss|h1|b1/);
    expect(page.facts[0]).toEqual({ label: "Handed in, of the group", value: "2 of 5" });
    // Wilson 1927 for 3 of 3 at 95 %: low end n / (n + z²) = 3 / (3 + 3.8415) = 0.4385, high end 1.
    expect(page.wrong).toEqual([
      { name: "Undercut", count: "3 of 3", interval: "95 % interval 43 to 100 in 100", share: 1 },
    ]);
  });

  it("says how many were answered and the mean score, and no single one", () => {
    const about = { title: "Lap", group: "Bay 3", aim: "", day: "today", handedIn: 2, members: 5 };
    const valueOf = (scores: readonly (number | null)[], label: RegExp) => {
      const beads = scores.map((score, i) => ({ ...bead(i, `s${i}`), score, returned: score !== null }));
      return wallPage(classCounts(beads), about).facts.find((fact) => label.test(fact.label))?.value;
    };
    // (0.5 + 0.75 + 1) / 3 = 0.75
    expect(valueOf([0.5, null, 0.75, 1], /Mean score by the rubric, of 3/)).toBe(
      "75 %, between 50 % and 100 %",
    );
    expect(valueOf([0.5, null, 0.75, 1], /Feedback returned/)).toBe("3 of 4");
    expect(valueOf([0.5, null], /Mean score/)).toBeUndefined();
  });
});
