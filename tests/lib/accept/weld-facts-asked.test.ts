import { expect, it } from "vitest";
import { judge, JudgeInputSchema, listCriteria, weldKinds, type WeldKind } from "@/lib/accept";
import { weldFactNames } from "@/lib/accept/weld-fact-names";

const sets = listCriteria();
const factsOf = (id: string) => sets.find((set) => set.id === id)!.weldFacts;

it("a fillet by AWS D1.1 is asked about the lapped edge, a butt weld about its penetration, neither about the other's", () => {
  const { fillet, butt } = factsOf("aws-d1-1-static");
  expect(fillet).toContain("alongLapEdge");
  expect(fillet).not.toContain("completePenetration");
  expect(butt).toContain("completePenetration");
  expect(butt).not.toContain("alongLapEdge");
});

// ISO 5817 Table 1, 1.11: excess penetration by the width of the root reinforcement; 3.1: plates and girth seams apart.
it("a butt weld by ISO 5817 is asked how wide its root is and which seam it is", () => {
  expect(factsOf("iso-5817-c").butt).toEqual(expect.arrayContaining(["rootWidthMm", "seam", "singleSided"]));
  expect(factsOf("iso-5817-c").fillet).not.toContain("rootWidthMm");
});

it("a fact that is not asked never changes a verdict", () => {
  const answers: Record<string, readonly unknown[]> = {
    seam: ["plate", "longitudinal", "girth", "branch", null],
    rootWidthMm: [null, 4, 12],
    closed: [true, false],
  };
  for (const set of sets)
    for (const kind of weldKinds)
      for (const name of weldFactNames.filter((one) => !set.weldFacts[kind].includes(one))) {
        const rows = (answers[name] ?? [true, false, null]).map((answer) =>
          rowsWith(set.id, kind, { [name]: answer }),
        );
        expect(new Set(rows), `${set.id}, ${kind}, ${name}`).toHaveProperty("size", 1);
      }
});

/** A long undercut, pores and excess penetration: something for every window and every seam. */
function rowsWith(criteriaId: string, kind: WeldKind, facts: object): string {
  const pore = (id: string, at: number) => ({
    id,
    imperfection: "surface-porosity",
    alongMm: [at, at],
    diameterMm: 2,
  });
  const verdict = judge(
    JudgeInputSchema.parse({
      criteriaId,
      weld: { kind, thicknessMm: 10, legMm: 6, lengthMm: 400, ...facts },
      observations: [
        { id: "u", imperfection: "undercut", alongMm: [0, 60], lengthMm: 60, depthMm: 0.6 },
        { id: "e", imperfection: "excess-penetration", alongMm: [380, 395], lengthMm: 15, heightMm: 3 },
        pore("p1", 5),
        pore("p2", 390),
      ],
      beadReadings: { leg1: 9, leg2: 9, misalignment: 2 },
    }),
  );
  if (!verdict.ok) throw new Error(verdict.issues[0]!.code);
  return JSON.stringify(
    verdict.value.rows.map(({ ruleId, result, limit }) => [ruleId, result, limit?.value]),
  );
}
