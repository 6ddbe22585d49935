import { describe, expect, it } from "vitest";
import {
  assess,
  emptyBeadJudgement,
  BeadContentSchema,
  sectionSetsFor,
  type BeadContent,
} from "@/lib/assess";
import { canonicalJson } from "@/lib/base";
import { newMark } from "@/lib/marks";
import type { SectionRow } from "@/lib/section";
import { imperfectionIds } from "@/lib/trade";
import { facts, meltedFillet, sectionBead } from "./section-bead";

const found = (content: BeadContent) => assess(content, facts).photos[0]!.section;
const rows = (content: BeadContent): ReadonlyMap<string, SectionRow> =>
  new Map(found(content)!.verdict!.rows.map((row) => [row.criterionId, row]));
const iso = { sectionSetId: "iso-9606-1-macro-fillet" };
const looked = { ...meltedFillet, lookedFor: [...imperfectionIds] };

describe("a section on a bead", () => {
  /** z / sqrt(2): the throat of a flat fillet of equal legs at a right angle (ISO 2553; AWS A3.0). */
  it("is measured: legs 8 mm and throat 8 / sqrt(2), each within its own uncertainty", () => {
    const { figures } = found(sectionBead())!.measures;
    for (const [id, true_] of [
      ["leg-1", 8],
      ["leg-2", 8],
      ["throat", 8 / Math.SQRT2],
      ["joint-angle", 90],
    ] as const)
      expect(Math.abs(figures[id]!.value - true_), id).toBeLessThan(figures[id]!.expandedUncertainty);
  });

  it("is judged by nothing while nothing is chosen, and never by a set for another joint", () => {
    expect(found(sectionBead())!.verdict).toBeNull();
    const butt = { ...meltedFillet, joint: "butt" as const, edges: [] };
    expect(found(sectionBead(butt, iso))!.verdict).toBeNull();
    expect(found(sectionBead(meltedFillet, { sectionSetId: "no-such-set" }))!.verdict).toBeNull();
    for (const set of sectionSetsFor("fillet")) expect(set.joints).toContain("fillet");
  });

  /** ISO 5817, 1.20: the throat asked for follows from the 6 mm leg of the set-up, a = z / sqrt(2) (ISO 2553). */
  it("takes the throat asked for from the target leg, unless one is stated", () => {
    const limit = (content: BeadContent) => rows(content).get("iso-macro-throat")!.limit?.value;
    expect(limit(sectionBead(looked, iso))).toBeCloseTo(6 / Math.SQRT2, 9);
    expect(limit(sectionBead({ ...looked, askedThroatMm: 5 }, iso))).toBe(5);
    const unknown = { ...sectionBead(looked, iso), setup: { ...sectionBead().setup, targetLegMm: null } };
    expect(limit(unknown)).toBeUndefined();
    expect(rows(unknown).get("iso-macro-throat")!.result).toBe("open");
  });

  it("takes neither from the other on a skewed joint: nobody can say which leg was meant", () => {
    const skew = {
      ...looked,
      edges: meltedFillet.edges.map((edge) =>
        edge.role === "plate-2"
          ? { ...edge, points: [edge.points[0]!, { x: edge.points[1]!.x + 220, y: edge.points[1]!.y }] }
          : edge,
      ),
    };
    expect(rows(sectionBead(skew, iso)).get("iso-macro-throat")!.missing).toContainEqual({
      kind: "stated",
      what: "specified-throat",
    });
  });

  it("counts what was looked for in the section, not what was looked for on the face", () => {
    const face = sectionBead(meltedFillet, { ...iso, lookedFor: [...imperfectionIds] });
    expect(rows(face).get("iso-macro-crack")!.result).toBe("open");
    expect(rows(sectionBead(looked, iso)).get("iso-macro-crack")!.result).toBe("meets");
  });

  it("fails on a crack that is marked in it", () => {
    const content = sectionBead(looked, iso);
    const crack = newMark("m1", "longitudinal-crack", {
      kind: "point",
      at: { x: 850, y: 950 },
      radius: null,
    });
    const [photo] = content.photos;
    const marked = { ...content, photos: [{ ...photo!, drawing: { ...photo!.drawing, marks: [crack] } }] };
    expect(rows(marked).get("iso-macro-crack")).toMatchObject({ result: "fails", markIds: ["m1"] });
    expect(found(marked)!.verdict!.result).toBe("fails");
  });

  it("is there from the joint in the set-up alone, with everything open", () => {
    const { section, verdict } = found(sectionBead(null, iso))!;
    expect(section.joint).toBe("fillet");
    expect(verdict!.result).toBe("open");
  });
});

describe("a bead without a section", () => {
  const plain = {
    ...sectionBead(null),
    photos: [{ ...sectionBead(null).photos[0]!, role: "face" as const }],
  };

  it("has none, whatever a photo once carried", () => {
    expect(assess(plain, facts).photos[0]!.section).toBeNull();
    const once = { ...plain, photos: [{ ...plain.photos[0]!, section: meltedFillet }] };
    expect(assess(once, facts).photos[0]!.section).toBeNull();
  });

  it("keeps its canonical text through the schema, to the letter", () => {
    const text = canonicalJson(plain);
    expect(canonicalJson(BeadContentSchema.parse(JSON.parse(text)))).toBe(text);
    expect(text).not.toMatch(/"section"|sectionSetId/);
    expect(Object.keys(emptyBeadJudgement)).not.toContain("sectionSetId");
  });
});
