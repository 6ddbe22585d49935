import { describe, expect, it } from "vitest";
import { judge, JudgeInputSchema, listCriteria, type Verdict } from "@/lib/accept";

/** What was once accepted, rejected or left open and must not be. Limits are those of the codes named in each case. */
function verdictOf(given: Record<string, unknown>): Verdict {
  const all = listCriteria().find(({ id }) => id === given["criteriaId"])!.imperfections;
  const result = judge(JudgeInputSchema.parse({ lookedFor: all, ...given }));
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}
const rowOf = (verdict: Verdict, ruleId: string) => verdict.rows.find((row) => row.ruleId === ruleId)!;
const gauge = (value: number, expandedUncertainty = 0) => ({
  unit: "mm",
  value,
  expandedUncertainty,
  source: "gauge",
});

describe("what nobody read is never met", () => {
  it("D1.3: the length of an undercut that was marked and not measured", () => {
    const verdict = verdictOf({
      criteriaId: "aws-d1-3",
      weld: { kind: "fillet", thicknessMm: 3, legMm: 3, lengthMm: 100 },
      beadReadings: { leg1: 3.2, leg2: 3.2 },
      observations: [{ id: "u", imperfection: "undercut" }],
    });
    expect(verdict.verdict).toBe("cannot-say");
    const row = rowOf(verdict, "aws-d1-3-undercut");
    expect(row).toMatchObject({ result: "open", reason: "reading-missing", value: null });
    expect(row.missing).toContainEqual({ quantity: "length", gauge: "rule", observationId: "u" });
  });

  it("ISO 5817 4.1: heights that nobody read add up to no nought", () => {
    const verdict = verdictOf({
      criteriaId: "iso-5817-c",
      weld: { kind: "butt", thicknessMm: 10, lengthMm: 300, singleSided: false, seam: "plate" },
      beadReadings: { reinforcement: 1, width: 12, toeAngle: 160, misalignment: 0 },
      observations: [
        { id: "a", imperfection: "undercut", place: "left-toe", alongMm: [10, 20], lengthMm: 10 },
        { id: "b", imperfection: "undercut", place: "right-toe", alongMm: [15, 25], lengthMm: 10 },
      ],
    });
    expect(verdict.verdict).toBe("cannot-say");
    expect(rowOf(verdict, "iso-c-4.1-several-in-one-section")).toMatchObject({ result: "open", value: null });
  });

  it("ISO 5817, thin plate: undercut whose length was not read is not short", () => {
    const verdict = verdictOf({
      criteriaId: "iso-5817-c",
      weld: { kind: "butt", thicknessMm: 3, lengthMm: 300, singleSided: false, seam: "plate" },
      observations: [{ id: "u", imperfection: "undercut", place: "left-toe", depthMm: 0.2 }],
    });
    expect(rowOf(verdict, "iso-c-1.7-undercut-2")).toMatchObject({ result: "open", value: null });
  });

  it("API 1104: neither in any 12 in nor on the whole weld", () => {
    const verdict = verdictOf({
      criteriaId: "api-1104",
      weld: { kind: "butt", thicknessMm: 15, lengthMm: 600, seam: "girth" },
      observations: [{ id: "u", imperfection: "undercut", depthMm: 0.7 }],
    });
    expect(verdict.verdict).toBe("cannot-say");
    for (const id of ["api-1104-undercut-length", "api-1104-undercut-length-2"])
      expect(rowOf(verdict, id)).toMatchObject({ result: "open", value: null });
  });
});

/** Size of a fillet with a hollow face: throat times root 2 (AWS A3.0, from memory). */
describe.each(["aws-d1-1-static", "aws-d1-6-static"])(
  "the face of a fillet counts in its size (%s)",
  (criteriaId) => {
    const fillet = (beadReadings: object) =>
      verdictOf({
        criteriaId,
        weld: { kind: "fillet", thicknessMm: 8, legMm: 6, lengthMm: 300 },
        beadReadings: { leg1: 6.5, leg2: 6.5, ...beadReadings },
      });

    it("legs 6.5, throat 2.0: 2.8, not 6.5", () => {
      const verdict = fillet({ throat: 2 });
      expect(verdict.verdict).toBe("reject");
      const row = verdict.rows.find(({ ruleId }) => /undersize$/.test(ruleId))!;
      expect(row.value).toBeCloseTo(6 - 2 * Math.SQRT2, 9);
      expect(row.figuresUsed).toContain("throat");
    });

    it("legs 6.5, hollow by 2, with or without a throat", () => {
      expect(fillet({ convexity: -2 }).verdict).toBe("reject");
      expect(fillet({ convexity: -2, throat: 2.6 }).verdict).toBe("reject");
      expect(fillet({ convexity: -2, throat: 2 }).verdict).toBe("reject");
    });

    it("flat and as large as its legs", () => {
      const row = fillet({ convexity: 0, throat: 4.6 }).rows.find(({ ruleId }) => /undersize$/.test(ruleId))!;
      expect(row.result).toBe("meets");
    });
  },
);

describe("a gap under a fillet", () => {
  it("takes a gap off the legs, and says so where it may be one", () => {
    const row = (rootGap: object, gauges: string) =>
      verdictOf({
        criteriaId: "aws-d1-1-static",
        settings: { gauges },
        lookedFor: [],
        weld: { kind: "fillet", thicknessMm: 8, legMm: 6, lengthMm: 300 },
        beadReadings: { leg1: 6.2, leg2: 6.2, throat: 4.4, convexity: 0, rootGap },
      }).rows.find(({ ruleId }) => /undersize$/.test(ruleId))!;
    // D1.1 7.21.1 (from memory): over 2 mm the leg is larger by the gap; 6.2 less 5 is 4.8 short of 6.
    expect(row(gauge(5), "as-read")).toMatchObject({ result: "fails" });
    expect(row(gauge(5), "as-read").value).toBeCloseTo(6 - (6.2 - 5), 9);
    expect(row(gauge(1.9, 0.3), "as-read").result).toBe("meets");
    expect(row(gauge(1.9, 0.3), "guarded")).toMatchObject({ result: "open", reason: "reading-missing" });
    expect(row(gauge(1.5, 0.3), "guarded").result).toBe("meets");
  });
});

describe("readings that cannot stand together", () => {
  const fillet = (beadReadings: object) =>
    verdictOf({
      criteriaId: "iso-5817-c",
      weld: { kind: "fillet", thicknessMm: 8, throatMm: 4.2, lengthMm: 200 },
      beadReadings: { leg1: 6, leg2: 6, width: 8.5, ...beadReadings },
    });

  it("legs 6, flat, throat 5.1: named, and nothing is accepted", () => {
    const verdict = fillet({ convexity: 0, throat: 5.1 });
    expect(verdict.verdict).toBe("cannot-say");
    expect(verdict.contradictions).toMatchObject([{ code: "fillet-readings" }]);
    expect(verdict.contradictions[0]!.between).toEqual(expect.arrayContaining(["throat", "convexity"]));
    expect(verdict.contradictions[0]!.again.length).toBeGreaterThan(0);
  });

  it("legs 6, flat, throat 4.3: one fillet", () => {
    expect(fillet({ convexity: 0, throat: 4.3 })).toMatchObject({ verdict: "accept", contradictions: [] });
  });

  it("an undercut 5 mm long that lies from 10 to 60", () => {
    const verdict = verdictOf({
      criteriaId: "aws-d1-1-static",
      weld: { kind: "fillet", thicknessMm: 10, legMm: 6, lengthMm: 400 },
      beadReadings: { leg1: 6.5, leg2: 6.5, throat: 4.7, convexity: 0, width: 9.2 },
      observations: [{ id: "u", imperfection: "undercut", alongMm: [10, 60], lengthMm: 5, depthMm: 0.5 }],
    });
    expect(verdict).toMatchObject({ verdict: "cannot-say", contradictions: [{ code: "length-and-place" }] });
  });
});

describe("what must be neither rejected nor left open", () => {
  const patch = (more: object) =>
    verdictOf({
      criteriaId: "iso-5817-c",
      only: ["surface-porosity"],
      weld: { kind: "fillet", thicknessMm: 5, throatMm: 5, lengthMm: 200 },
      observations: [
        {
          id: "p",
          imperfection: "surface-porosity",
          patterns: ["clustered"],
          areaMm2: 30,
          lengthMm: 8,
          ...more,
        },
      ],
    });

  it("a patch is judged by its largest pore, never as one pore of the patch's size", () => {
    expect(patch({})).toMatchObject({
      verdict: "cannot-say",
      missing: [{ quantity: "largest-pore", gauge: "calliper", observationId: "p" }],
    });
    expect(patch({ diameterMm: 0.8 }).verdict).toBe("accept");
    const outline = { unit: "mm", value: 6.2, expandedUncertainty: 0.2, source: "photo" };
    expect(patch({ diameterMm: outline })).toMatchObject({
      verdict: "cannot-say",
      unused: [
        { figure: "p.length", why: "not-needed", by: "hand" },
        { figure: "p.diameter", why: "not-needed", by: "photo" },
        { figure: "p.area", why: "not-needed", by: "hand" },
      ],
    });
    expect(patch({ diameterMm: 1.2 }).verdict).toBe("reject");
  });

  it("D1.1: a patch adds up to no more than its pores, and to no less than the largest", () => {
    const sum = (more: object) =>
      verdictOf({
        criteriaId: "aws-d1-1-static",
        only: ["surface-porosity"],
        weld: { kind: "fillet", thicknessMm: 10, legMm: 6, lengthMm: 400 },
        observations: [{ id: "p", imperfection: "surface-porosity", patterns: ["clustered"], ...more }],
      });
    expect(sum({ diameterMm: 2, poreCount: 4, alongMm: [10, 20] }).verdict).toBe("accept");
    expect(sum({ diameterMm: 2, alongMm: [10, 20] })).toMatchObject({
      verdict: "cannot-say",
      missing: [{ quantity: "pore-count", gauge: "eye", observationId: "p" }],
    });
    expect(sum({ diameterMm: 11 }).verdict).toBe("reject");
    // Below the least size that is counted, none counts.
    expect(sum({ diameterMm: 0.8 }).verdict).toBe("accept");
  });

  it('"only" asks for nothing but what it names', () => {
    const verdict = verdictOf({
      criteriaId: "aws-d1-1-static",
      only: ["surface-porosity"],
      lookedFor: [],
      weld: { kind: "fillet", thicknessMm: 10, legMm: 6, lengthMm: 400 },
      observations: [{ id: "p", imperfection: "surface-porosity", diameterMm: 2, alongMm: [10, 12] }],
    });
    expect(verdict).toMatchObject({ verdict: "accept", notLookedFor: [] });
  });

  it("D1.1 cyclic: beyond both limits that may apply is rejected with both named", () => {
    const verdict = verdictOf({
      criteriaId: "aws-d1-1-cyclic",
      only: ["undercut"],
      weld: { kind: "fillet", thicknessMm: 10, legMm: 6, lengthMm: 400 },
      observations: [{ id: "u", imperfection: "undercut", depthMm: 1.5, alongMm: [0, 10], lengthMm: 10 }],
    });
    const row = rowOf(verdict, "d1-1-cyclic-7-undercut");
    expect(row).toMatchObject({ result: "fails", limit: null });
    expect(row.limitsPossible.map(({ value }) => value)).toEqual([0.25, 1]);
  });

  it("what applies to no weld of this kind goes to a person instead of through", () => {
    const verdict = verdictOf({
      criteriaId: "iso-5817-c",
      weld: { kind: "fillet", thicknessMm: 8, throatMm: 4.2, lengthMm: 200 },
      beadReadings: { leg1: 6, leg2: 6, throat: 4.3, convexity: 0, width: 8.5 },
      observations: [{ id: "r", imperfection: "root-concavity", alongMm: [0, 10], depthMm: 1 }],
    });
    expect(verdict.verdict).toBe("cannot-say");
    expect(rowOf(verdict, "no-rule")).toMatchObject({ reason: "qualified-person-decides" });
  });
});

describe("what a row says", () => {
  const pore = (settings: object, U: number) =>
    verdictOf({
      criteriaId: "aws-d1-1-cyclic",
      only: ["undercut"],
      settings,
      weld: { kind: "fillet", thicknessMm: 10, legMm: 6, lengthMm: 400, transverseToTension: true },
      observations: [
        { id: "u", imperfection: "undercut", depthMm: gauge(0.2, U), alongMm: [0, 9], lengthMm: 9 },
      ],
    });

  it("warns where the uncertainty is more than a third of the limit", () => {
    expect(rowOf(pore({}, 0.1), "d1-1-cyclic-7-undercut")).toMatchObject({ result: "meets", coarse: true });
    expect(rowOf(pore({}, 0.08), "d1-1-cyclic-7-undercut")).toMatchObject({ result: "meets", coarse: false });
  });

  it("decides by the rule that was chosen: JCGM 106:2012 8.2 and 8.3, ISO 14253-1", () => {
    // 0.2 + 0.05 meets 0.25 exactly; 1.65 u of U = 0.06 is 0.0495.
    expect(pore({ gauges: "guarded" }, 0.05).verdict).toBe("accept");
    expect(pore({ gauges: "guarded" }, 0.06).verdict).toBe("cannot-say");
    expect(pore({ gauges: "one-sided" }, 0.06).verdict).toBe("accept");
    expect(pore({ gauges: "one-sided" }, 0.061).verdict).toBe("cannot-say");
    expect(pore({ gauges: "as-read" }, 0.5).verdict).toBe("accept");
  });

  it("has no two rows of one name, and names what is missing", () => {
    for (const { id, weldKinds } of listCriteria())
      for (const kind of weldKinds) {
        const { rows } = verdictOf({ criteriaId: id, lookedFor: [], weld: { kind, throatMm: 5 } });
        const titles = rows.map(({ title, clause }) => `${title} ${clause}`);
        expect(new Set(titles).size, `${id} ${kind}`).toBe(titles.length);
        for (const row of rows)
          if (row.reason === "weld-fact-missing") expect(row.missing.length, row.ruleId).toBeGreaterThan(0);
      }
  });

  it("says that nobody has looked yet", () => {
    const weld = { kind: "fillet", thicknessMm: 8, throatMm: 4.2, lengthMm: 200 };
    expect(verdictOf({ criteriaId: "iso-5817-c", lookedFor: [], weld }).lookedAt).toBe(false);
    expect(verdictOf({ criteriaId: "iso-5817-c", lookedFor: ["undercut"], weld }).lookedAt).toBe(true);
  });

  it("names what was read for nothing", () => {
    const verdict = verdictOf({
      criteriaId: "asme-viii-1-uw-35",
      weld: { kind: "butt", thicknessMm: 10, lengthMm: 300 },
      beadReadings: { reinforcement: 2 },
      observations: [{ id: "c", imperfection: "longitudinal-crack", lengthMm: 12 }],
    });
    expect(verdict.unused).toEqual([
      { figure: "reinforcement", why: "no-rule", by: "hand" },
      { figure: "c.length", why: "not-needed", by: "hand" },
    ]);
  });
});
