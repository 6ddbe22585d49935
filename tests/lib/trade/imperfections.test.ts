import { describe, expect, it } from "vitest";
import { imperfectionIds, imperfections, isoNumber, isoNumberText, joints } from "@/lib/trade";

const rows = imperfectionIds.map((id) => imperfections[id]);
const doubles = (list: readonly string[]) => list.filter((one, i) => list.indexOf(one) !== i);

describe("the vocabulary", () => {
  it("has one row for each id, under its own id, with a name and a look", () => {
    expect(Object.keys(imperfections)).toEqual([...imperfectionIds]);
    expect(rows.map(({ id }) => id)).toEqual([...imperfectionIds]);
    for (const { name, look } of rows) {
      expect(name).toMatch(/^[A-Z][a-z]/);
      expect(look).toMatch(/^[A-Z].+\.$/);
    }
  });

  it("calls no two things the same, and shares no ISO number", () => {
    const names = rows.flatMap(({ name, alsoCalled }) => [
      ...new Set([name, ...alsoCalled].map((word) => word.toLowerCase())),
    ]);
    expect(doubles(names)).toEqual([]);
    const numbers = rows.flatMap(({ iso6520, iso6520InButt }) => [iso6520, iso6520InButt]);
    expect(doubles(numbers.filter((number) => number !== null))).toEqual([]);
  });

  it("shows every crack to an inspector first", () => {
    const cracks = rows.filter(({ group, id }) => group === "crack" || id.includes("crack"));
    expect(cracks.map(({ group, inspectorFirst }) => [group, inspectorFirst])).toEqual(
      cracks.map(() => ["crack", true]),
    );
    expect(cracks).toHaveLength(7);
  });

  it("numbers as ISO 6520-1 does", () => {
    // Titles of ISO 6520-1:2007; these numbers from memory, 502, 503, 505 and 509 also seen in lists of ISO 5817.
    const published: Readonly<Record<string, string | null>> = {
      "radiating-crack": "103",
      "crack-group": "105",
      "branching-crack": "106",
      "tungsten-inclusion": "3041",
      "copper-inclusion": "3042",
      "steep-toe": "505",
      "angular-misalignment": "508",
      sagging: "509",
      "irregular-surface": "514",
      "torn-surface": "603",
      "grinding-mark": "604",
      "chipping-mark": "605",
      underflushing: "606",
      burnback: null,
    };
    for (const { id, iso6520 } of rows)
      if (id in published) expect([id, iso6520]).toEqual([id, published[id]]);
    expect(rows.filter(({ id }) => id in published)).toHaveLength(Object.keys(published).length);
  });

  it("numbers a convex bead 503 in a fillet and 502 in a butt weld, and says both while nobody knows", () => {
    expect(joints.map((joint) => [joint, isoNumber("convex-bead", joint)])).toEqual([
      ["bead-on-plate", "502"],
      ["stringer-pad", "502"],
      ["lap", "503"],
      ["tee", "503"],
      ["outside-corner", "503"],
      ["butt-open", "502"],
      ["butt-backed", "502"],
      ["groove-open", "502"],
      ["groove-backed", "502"],
    ]);
    expect(isoNumber("convex-bead", null)).toBeNull();
    expect(isoNumberText("convex-bead", null)).toBe("503, butt weld 502");
    expect(isoNumberText("undercut", null)).toBe("501");
    expect(isoNumberText("wandering", "tee")).toBeNull();
  });
});
