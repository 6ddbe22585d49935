import { describe, expect, it } from "vitest";
import { assessBead } from "@/lib/assess";
import { beadRows, SignedRecordSchema } from "@/lib/inspect";
import { signBead } from "@/lib/inspect/sign-bead";
import { imperfectionIds } from "@/lib/trade";
import { meltedFillet } from "../assess/section-bead";
import { scale } from "../section/known-shapes";
import { recordOf, soundBead } from "./build";

const looked = { ...meltedFillet, lookedFor: [...imperfectionIds] };

/** A sound bead, its photo now one of a cut weld, judged by `setId`. */
function cutBead(setId: string | null, section = looked) {
  const bead = soundBead();
  const [photo] = bead.content.photos;
  const judgement = { ...bead.content.judgement, sectionSetId: setId };
  const drawing = { ...photo!.drawing, scale };
  return {
    ...bead,
    content: {
      ...bead.content,
      judgement,
      photos: [{ ...photo!, role: "section" as const, drawing, section }],
    },
  };
}

describe("a signed bead with a section", () => {
  it("holds figures as numbers and words in both units, and each row", () => {
    const [photo] = signBead(assessBead(cutBead("aws-d1-1-macro-fillet"))).photos;
    const leg = photo!.section!.figures.find(({ id }) => id === "leg-1")!;
    expect(Math.abs(leg.value - 8)).toBeLessThan(leg.expandedUncertainty);
    expect([leg.unit, leg.text.metric, leg.text.inch]).toEqual([
      "mm",
      expect.stringMatching(/ mm$/),
      expect.stringMatching(/ in$/),
    ]);
    expect(photo!.section!.verdict!.clauses.map(({ title }) => title)).toContain("No cracks");
    const rows = beadRows(signBead(assessBead(cutBead("aws-d1-1-macro-fillet"))));
    expect(rows.map(({ label }) => label)).toContain("Section, photo 1: Leg on plate 1");
  });

  it("is never better than its section", () => {
    expect(signBead(assessBead(cutBead(null))).result).toBe("accepted");
    const open = cutBead("aws-d1-1-macro-fillet", { ...looked, lookedFor: [] });
    expect(signBead(assessBead(open)).result).toBe("open");
    const tooSmall = cutBead("iso-9606-1-macro-fillet", { ...looked, askedThroatMm: 30 });
    expect(signBead(assessBead(tooSmall)).result).toBe("not-accepted");
  });

  it("is signed and read back as it is; a bead without one has no such key", () => {
    const record = recordOf({ beads: [cutBead("iso-9606-1-macro-fillet")] });
    expect(SignedRecordSchema.parse(JSON.parse(JSON.stringify(record)))).toEqual(record);
    expect(record.beads[0]!.photos[0]!.section!.drawing).toEqual(looked);
    expect(recordOf({ beads: [soundBead()] }).beads[0]!.photos[0]).not.toHaveProperty("section");
  });
});
