import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Quantity } from "@/lib/measure";
import { judgeSection, sectionFigureIds, sectionSets, type SectionRow } from "@/lib/section";
import { type SectionFigures } from "@/lib/section/types";
import { type SectionGiven } from "@/lib/section/judgement";

const photo = (value: number, U = 0.1): Quantity => ({
  unit: "mm",
  value,
  expandedUncertainty: U,
  source: "photo",
  budget: [],
});
const unread = Object.fromEntries(sectionFigureIds.map((id) => [id, null])) as SectionFigures;
const good: SectionFigures = {
  ...unread,
  "leg-1": photo(7),
  "leg-2": photo(6.8),
  "leg-difference": photo(0.2),
  throat: photo(5),
  "nominal-throat": photo(4.8),
  convexity: photo(0.4),
  concavity: photo(0),
  "face-width": photo(9.5),
  "root-penetration": photo(0.6),
  "fusion-1-least": photo(0.5),
  "fusion-2-least": photo(0.4),
};
const all = [
  "longitudinal-crack",
  "transverse-crack",
  "crater-crack",
  "overlap",
  "lack-of-fusion",
  "undercut",
  "surface-porosity",
  "wormhole",
  "trapped-slag",
] as const;
const given = (more: Partial<SectionGiven> = {}): SectionGiven => ({
  setId: "aws-d1-1-macro-fillet",
  specifiedLegMm: 6,
  specifiedThroatMm: 4,
  plateThicknessMm: 10,
  units: "si",
  marks: [],
  lookedFor: all,
  ...more,
});
const mark = (imperfection: SectionGiven["marks"][number]["imperfection"], length: Quantity | null) => ({
  id: "m1",
  imperfection,
  lengthMm: length,
  diameterMm: null,
  depthMm: null,
});
function row(id: string, figures = good, more: Partial<SectionGiven> = {}): SectionRow {
  const judged = judgeSection(figures, given(more));
  if (!judged.ok) throw new Error(judged.issues[0]!.code);
  return judged.value.rows.find(({ criterionId }) => criterionId === id)!;
}

describe("a section judged three ways", () => {
  it.each(sectionSets.map(({ id }) => id))("%s: a sound section meets every row", (setId) => {
    const judged = judgeSection(good, given({ setId }));
    expect(judged.ok && judged.value.rows.filter(({ result }) => result !== "meets")).toEqual([]);
    expect(judged.ok && judged.value.result).toBe("meets");
  });

  it.each(sectionSets.map(({ id }) => id))(
    "%s: what was not read is open, and says what would settle it",
    (setId) => {
      const judged = judgeSection(
        unread,
        given({ setId, lookedFor: [], specifiedLegMm: null, specifiedThroatMm: null }),
      );
      if (!judged.ok) throw new Error("not judged");
      expect(judged.value.result).toBe("open");
      for (const one of judged.value.rows) {
        expect(one.result).toBe("open");
        expect(one.missing.length).toBeGreaterThan(0);
      }
    },
  );

  it("knows no other set", () => {
    const judged = judgeSection(good, given({ setId: "none" }));
    expect(judged.ok).toBe(false);
  });

  it("every row from memory or an older edition asks for the copy", () => {
    for (const { criteria } of sectionSets)
      for (const { source } of criteria)
        expect(["seen", "seen-older", "memory"].includes(source.confidence)).toBe(true);
    expect(row("d11-macro-leg").checkYourCopy).toBe(true);
    for (const setId of sectionSets.map(({ id }) => id)) {
      const judged = judgeSection(good, given({ setId }));
      expect(judged.ok && judged.value.rows.every(({ checkYourCopy }) => checkYourCopy)).toBe(true);
    }
  });
});

describe("the guard band (JCGM 106:2012, 8.3)", () => {
  it.each([
    [6.11, "meets"],
    [6.05, "open"],
    [5.95, "open"],
    [5.89, "fails"],
  ] as const)("a leg of %d +- 0.1 against 6 %s", (leg, result) => {
    const one = row("d11-macro-leg", { ...good, "leg-2": photo(leg) });
    expect(one).toMatchObject({ result, figure: "leg-2", value: leg, limit: { comparison: ">=", value: 6 } });
    if (result === "open") expect(one.missing).toEqual([{ kind: "closer", figure: "leg-2" }]);
  });

  it("never meets and fails on the same figure, and a wider band only opens", () => {
    const result = (value: number, u: number) =>
      row("d11-macro-leg", { ...good, "leg-1": photo(value, u), "leg-2": photo(99) }).result;
    fc.assert(
      fc.property(
        fc.double({ min: 3, max: 9, noNaN: true }),
        fc.double({ min: 0, max: 2, noNaN: true }),
        (v, u) => {
          const wide = result(v, u + 0.5);
          expect([result(v, u), "open"]).toContain(wide);
          expect(result(v, u)).toBe(v - u >= 6 ? "meets" : v + u < 6 ? "fails" : "open");
        },
      ),
      { numRuns: 300, seed: 17639 },
    );
  });
});

describe("single rows", () => {
  it("fusion to the root need not go beyond it, and short of it fails", () => {
    expect(row("d11-macro-root", { ...good, "root-penetration": photo(0.12) }).result).toBe("meets");
    expect(row("d11-macro-root", { ...good, "root-penetration": photo(0.02) }).result).toBe("open");
    expect(row("d11-macro-root", { ...good, "root-penetration": photo(-0.4) }).result).toBe("fails");
  });

  it("no fusion figure fails by itself; a marked place without fusion does", () => {
    expect(row("d11-macro-fusion", { ...good, "fusion-2-least": photo(0, 0.1) })).toMatchObject({
      result: "open",
      figure: "fusion-2-least",
    });
    expect(row("d11-macro-fusion", good, { marks: [mark("lack-of-fusion", null)] }).result).toBe("fails");
    expect(row("d11-macro-fusion", good, { lookedFor: [] }).result).toBe("open");
  });

  /** AWS D1.1 fillet schedule of 7.23 (from memory): 2 mm up to 8 mm of face, 3 mm under 25 mm, 5 mm beyond. */
  it.each([
    [7, 2.5, "fails"],
    [12, 2.5, "meets"],
    [30, 4.5, "meets"],
    [12, 3.2, "fails"],
    [8.05, 2.5, "open"],
  ] as const)("face %d mm, convexity %d: %s", (width, convexity, result) => {
    const figures = { ...good, "face-width": photo(width), convexity: photo(convexity) };
    expect(row("d11-macro-convexity", figures).result).toBe(result);
  });

  it("convexity beyond every band fails, within every band meets, without a width", () => {
    const of = (convexity: number) => ({ ...good, "face-width": null, convexity: photo(convexity) });
    expect(row("d11-macro-convexity", of(6)).result).toBe("fails");
    expect(row("d11-macro-convexity", of(1)).result).toBe("meets");
    expect(row("d11-macro-convexity", of(2.5))).toMatchObject({
      result: "open",
      missing: [{ kind: "figure", figure: "face-width" }],
    });
  });

  it("undercut is judged by its depth in the section", () => {
    expect(row("d11-macro-undercut", good, { marks: [mark("undercut", photo(0.7))] }).result).toBe("meets");
    expect(row("d11-macro-undercut", good, { marks: [mark("undercut", photo(1.3))] }).result).toBe("fails");
    expect(row("d11-macro-undercut", good, { marks: [mark("undercut", null)] })).toMatchObject({
      result: "open",
      missing: [{ kind: "size", markId: "m1" }],
    });
    expect(row("d11-macro-undercut", good, { lookedFor: [] }).result).toBe("open");
  });

  /** 1/32 in is 0.79 mm: the two systems of units part here. */
  it("US units have their own limit", () => {
    const marks = [mark("undercut", photo(0.88, 0.05))];
    expect(row("d11-macro-undercut", good, { marks }).result).toBe("meets");
    expect(row("d11-macro-undercut", good, { marks, units: "us" }).result).toBe("fails");
  });

  const iso = { setId: "iso-9606-1-macro-fillet" };

  /** ISO 5817 item 1.16, level B: a = 5 gives 2.25 mm; item 1.10, level C: b = 10 gives 2.5 mm. */
  it.each([
    [2.1, "meets"],
    [2.2, "open"],
    [2.4, "fails"],
  ] as const)("ISO: legs %d apart on a throat of 5: %s", (difference, result) => {
    const figures = { ...good, "leg-difference": photo(difference) };
    expect(row("iso-macro-legs", figures, { ...iso, specifiedThroatMm: 5 }).result).toBe(result);
  });

  it("ISO: a measured width widens the band of its limit", () => {
    const figures = { ...good, "face-width": photo(10, 2), convexity: photo(2.3, 0.1) };
    // 1 + 0.15 x 10 = 2.5, give or take 0.3: 2.3 give or take 0.1 is too close.
    expect(row("iso-macro-convexity", figures, iso).result).toBe("open");
    expect(row("iso-macro-convexity", { ...figures, "face-width": photo(10, 0.1) }, iso).result).toBe(
      "meets",
    );
  });

  it("ISO: undercut in thin plate is allowed in short stretches only, which no section shows", () => {
    const marks = [mark("undercut", photo(0.15, 0.05))];
    expect(row("iso-macro-undercut", good, { ...iso, marks, plateThicknessMm: 10 }).result).toBe("meets");
    expect(row("iso-macro-undercut", good, { ...iso, marks, plateThicknessMm: 3 }).missing).toEqual([
      { kind: "length-along" },
    ]);
    expect(row("iso-macro-undercut", good, { ...iso, marks, plateThicknessMm: null }).result).toBe("open");
  });

  it("ISO: too much throat is counted beyond the specified one", () => {
    // a = 4: 1 + 0.2 x 4 = 1.8 mm more at most.
    expect(row("iso-macro-throat-excess", { ...good, throat: photo(5.6) }, iso)).toMatchObject({
      result: "meets",
    });
    expect(row("iso-macro-throat-excess", { ...good, throat: photo(6) }, iso).result).toBe("fails");
  });
});
