import { existsSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { atlasEntry, pictureAt, severities, smallPicture, type AtlasEntry, type LimitRow } from "@/lib/atlas";
import { imperfectionIds, imperfections } from "@/lib/trade";

const entries = imperfectionIds.map((id) => atlasEntry(id, null));

function clause({ limits }: AtlasEntry, set: string, number: string): LimitRow {
  const found = limits.limited
    .filter(({ title }) => title === set)
    .flatMap(({ rows }) => rows)
    .find((row) => row.clause.includes(number));
  if (!found) throw new Error(`${set} has no ${number}`);
  return found;
}
const says = (row: LimitRow): readonly string[] =>
  row.lines.map((line) => `${line.when}: ${line.says.join("; ")}`);

describe("a page of the atlas", () => {
  it("tells of every kind how to tell it, where it comes from or why from nowhere, what to do and who sees it", () => {
    for (const { imperfection, lookAlikes, causes, causeless, firstAct, whoSees } of entries) {
      expect(lookAlikes.length).toBeGreaterThan(0);
      expect(causes.length > 0).toBe(causeless === null);
      expect(firstAct).toMatch(/^[A-Z].*\.$/);
      expect(whoSees.startsWith("A qualified inspector")).toBe(imperfection.inspectorFirst);
    }
  });

  it("has pictures that exist", () => {
    for (const id of imperfectionIds)
      for (const { src, alt } of [smallPicture(id), ...severities.map((one) => pictureAt(id, one))]) {
        expect([src, existsSync(`public${src}`)]).toEqual([src, true]);
        expect(alt).toContain(imperfections[id].name);
      }
  });

  it("prints the limits of undercut as the codes have them", () => {
    const entry = atlasEntry("undercut", null);
    // ISO 5817 Table 1, 1.7 (2014 and 2023): t > 3 mm, B 0.05 t and 0.5 mm, C 0.1 t and 0.5 mm, D 0.2 t and 1 mm.
    const iso = (level: string) => says(clause(entry, `ISO 5817 level ${level}`, "1.7")).at(-1);
    expect(iso("B")).toBe("t over 3 mm: depth at most 0.05 t, but no more than 0.5 mm");
    expect(iso("C")).toBe("t over 3 mm: depth at most 0.1 t, but no more than 0.5 mm");
    expect(iso("D")).toBe("t over 3 mm: depth at most 0.2 t, but no more than 1 mm");
    // AWS D1.1:2020 Table 8.1 (7)(A): under 1 in, 1/32 in; up to 1/16 in for an accumulated 2 in in 12 in.
    const [, , , long] = says(clause(entry, "AWS D1.1 static", "(7)(A)"));
    expect(long).toBe(
      "t below 25 mm (1 in), L from 300 mm (12 in): depth at most 2 mm (1/16 in); length added up of those with a " +
        "depth over 1 mm (1/32 in) in any 300 mm (12 in) at most 50 mm (2 in)",
    );
    // AWS D1.3:1998 6.1.1.3: an eighth of the length.
    expect(says(clause(entry, "AWS D1.3 sheet steel", "6.1.1.3"))).toEqual([
      ": length added up on the whole weld at most 0.125 L",
    ]);
  });

  it("prints that cracks are refused by every code that names them", () => {
    const { limits } = atlasEntry("longitudinal-crack", null);
    expect(limits.limited.length).toBeGreaterThan(10);
    for (const { title, rows } of limits.limited)
      expect([
        title,
        rows.some(({ lines }) => lines.every(({ says: words }) => words.includes("none allowed"))),
      ]).toEqual([title, true]);
  });

  it("prints shares of the length as the codes write them, and marks what is to be checked", () => {
    // AWS D1.1:2020 Table 8.1 (7)(A), short welds: a sixth of the length, as 2 in in 12 in.
    const row = clause(atlasEntry("undercut", null), "AWS D1.1 static", "(7)(A)");
    expect(says(row).join(" ")).toContain("at most L / 6");
    expect(row.checkYourCopy).toBe(true);
    for (const { limits } of entries)
      for (const { rows } of limits.limited)
        for (const { lines } of rows)
          for (const { says: words } of lines) expect(words.join(" ")).not.toMatch(/undefined|NaN|\[object/);
  });
});
