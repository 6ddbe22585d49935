import { describe, expect, it } from "vitest";
import { assess } from "@/lib/assess";
import type { Quantity } from "@/lib/measure";
import { sectionClauses, sectionFigureRows } from "@/lib/report";
import { sectionFigureText } from "@/lib/report/section-rows";
import { inch, metric } from "@/lib/units";
import { facts, meltedFillet, sectionBead } from "../assess/section-bead";

const quantity = (unit: Quantity["unit"], value: number, expandedUncertainty: number): Quantity => ({
  unit,
  value,
  expandedUncertainty,
  budget: [],
  source: "photo",
});

describe("a figure of a section in words", () => {
  it.each([
    [quantity("mm", 8.66, 0.4), metric, "8.7 ± 0.4 mm"],
    [quantity("mm", -0.81, 0.4), metric, "−0.8 ± 0.4 mm"],
    [quantity("mm2", 65.04, 4.6), metric, "65 ± 5 mm²"],
    [quantity("mm2", 65.04, 21), metric, "65 ± 21 mm²"],
    // 645.16 mm² to the square inch, exactly (international inch of 25.4 mm).
    [quantity("mm2", 64.516, 6.4516), inch, "0.100 ± 0.010 in²"],
    [quantity("deg", 89.96, 2.2), metric, "90 ± 3°"],
    [quantity("ratio", 0.281, 0.049), metric, "28 ± 5 %"],
  ])("%o", (one, units, text) => {
    expect(sectionFigureText(one, units)).toBe(text);
  });

  it("each of the joint's figures has a row, read or not", () => {
    const { measures } = assess(sectionBead({ ...meltedFillet, root: null }), facts).photos[0]!.section!;
    const rows = new Map(sectionFigureRows(measures, metric).map((row) => [row.id, row]));
    expect(rows.get("leg-1")?.text).toMatch(/^(7\.[89]|8(\.[0-2])?) ± /);
    expect(rows.get("root-penetration")?.text).toBeNull();
    expect(rows.has("reinforcement")).toBe(false);
  });
});

describe("a row of the macro criteria in words", () => {
  it("says what was read, the limit, the clause and what is missing", () => {
    const content = sectionBead(meltedFillet, { sectionSetId: "aws-d1-1-macro-fillet" });
    const found = assess(content, facts).photos[0]!.section!;
    const clauses = new Map(sectionClauses(found, () => null, metric).map((one) => [one.id, one]));
    const leg = clauses.get("d11-macro-leg")!;
    expect(leg.detail).toMatch(/^leg on plate [12]: .* mm; limit at least 6 mm/);
    expect(leg.clause).toBe("AWS D1.1/D1.1M, 2020, 6.10.4.1 (3)");
    expect(leg.checkYourCopy).toBe(true);
    expect(clauses.get("d11-macro-crack")!.detail).toMatch(/nobody has said they looked for: .*crack/);
  });
});
