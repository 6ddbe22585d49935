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
});
