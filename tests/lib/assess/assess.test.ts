import { describe, expect, it } from "vitest";
import { assess, BeadJudgementSchema, emptyBeadContent, weldKind, type BeadContent } from "@/lib/assess";
import { judgeInput } from "@/lib/assess/judge-input";
import { emptyDrawing, type Drawing, type Mark } from "@/lib/marks";
import { emptyRunSetup } from "@/lib/setup";

const facts = [{ id: "p1", sha256: "0".repeat(64), widthPx: 2000, heightPx: 1500 }];
/** 400 px for 20 mm: 20 px to the millimetre. */
const scale: Drawing["scale"] = {
  kind: "two-points",
  a: { x: 100, y: 1200 },
  b: { x: 500, y: 1200 },
  lengthMm: 20,
};

const undercut: Mark = {
  id: "u",
  imperfection: "undercut",
  shape: {
    kind: "line",
    points: [
      { x: 300, y: 700 },
      { x: 540, y: 700 },
    ],
  },
  place: "upper-toe",
  stretch: "run",
  patterns: ["continuous"],
  gauge: [],
  note: "",
};

function bead(drawing: Partial<Drawing>, change: Partial<BeadContent> = {}): BeadContent {
  return {
    ...emptyBeadContent,
    photos: [{ id: "p1", role: "face", drawing: { ...emptyDrawing, ...drawing } }],
    ...change,
  };
}

describe("assess", () => {
  it("has no size without a scale, and says so", () => {
    const { photos } = assess(bead({ marks: [undercut] }), facts);
    expect(photos[0]?.calibration).toMatchObject({ ok: false, issues: [{ code: "no-scale" }] });
    expect(photos[0]?.marks[0]?.lengthMm).toBeNull();
  });

  it("measures with the scale: 240 px at 20 px/mm is 12 mm, with an uncertainty", () => {
    const { photos } = assess(bead({ marks: [undercut], scale }), facts);
    const length = photos[0]?.marks[0]?.lengthMm;
    expect(length?.value).toBeCloseTo(12, 9);
    expect(length?.expandedUncertainty).toBeGreaterThan(0.1);
    expect(length?.expandedUncertainty).toBeLessThan(2);
  });

  it("finds a set-up fault with no marks at all", () => {
    const setup = {
      ...emptyRunSetup,
      process: "FCAW-S" as const,
      electrodeClass: "E71T-11",
      polarity: "DCEP" as const,
    };
    const { setup: findings, diagnosis } = assess(bead({}, { setup }), facts);
    expect(
      findings.some(({ code, severity }) => code === "polarity-against-class" && severity === "stop"),
    ).toBe(true);
    if (!diagnosis.ok) throw new Error("no diagnosis");
    expect(diagnosis.value.causes[0]?.id).toBe("polarity");
  });

  it("passes over an answer to a question that is not asked any more", () => {
    const judgement = { ...emptyBeadContent.judgement, answers: { "question-of-last-year": "yes" } };
    expect(assess(bead({ marks: [undercut] }, { judgement }), facts).diagnosis.ok).toBe(true);
  });

  it("gives no verdict until criteria are chosen", () => {
    expect(assess(bead({}), facts).verdict).toBeNull();
  });

  it("lets a gauge reading decide what the photo cannot show", () => {
    const setup = { ...emptyRunSetup, joint: "tee" as const, thicknessMm: 10, targetLegMm: 6 };
    const judgement = { ...emptyBeadContent.judgement, criteriaId: "iso-5817-c" };
    const rowFor = (mark: Mark) => {
      const { verdict } = assess(bead({ marks: [mark], scale }, { setup, judgement }), facts);
      if (!verdict?.ok) throw new Error("no verdict");
      return verdict.value.rows.find(
        (row) =>
          row.readingsUsed.some((id) => id.endsWith(":u")) ||
          row.missing.some(({ observationId }) => observationId?.endsWith(":u")),
      );
    };
    // ISO 5817:2014, 1.7, level C: h <= 0.1 t, at most 0.5 mm over 3 mm thickness.
    expect(rowFor(undercut)?.result).toBe("open");
    const read = (valueMm: number): Mark => ({
      ...undercut,
      gauge: [{ quantity: "depth", valueMm, instrument: "Undercut gauge", resolutionMm: 0.1 }],
    });
    expect(rowFor(read(0.8))?.result).toBe("fails");
    expect(rowFor(read(0.2))?.result).toBe("meets");
  });
});

describe("judgeInput", () => {
  it("never calls a marked imperfection looked for and absent", () => {
    const judgement = {
      ...emptyBeadContent.judgement,
      criteriaId: "iso-5817-c",
      lookedFor: ["undercut" as const, "spatter" as const],
    };
    expect(judgeInput(bead({ marks: [undercut] }, { judgement }), [])?.lookedFor).toEqual(["spatter"]);
  });

  it("judges a joint as the weld it makes", () => {
    expect([weldKind("tee"), weldKind("groove-backed"), weldKind("stringer-pad"), weldKind(null)]).toEqual([
      "fillet",
      "butt",
      "surfacing",
      "surfacing",
    ]);
  });
});

describe("facts of the weld", () => {
  const lapEdge = (joint: "lap" | "tee", alongLapEdge: boolean | null) => {
    const content = bead(
      {},
      {
        setup: { ...emptyRunSetup, joint, thicknessMm: 5 },
        judgement: BeadJudgementSchema.parse({ criteriaId: "aws-d1-1-static", weld: { alongLapEdge } }),
      },
    );
    return judgeInput(content, [])?.weld.alongLapEdge;
  };

  it("a record from before they were asked reads as not known", () => {
    const old = { closed: true, singleSided: false, transverseToTension: null };
    expect(BeadJudgementSchema.parse({ weld: old }).weld).toMatchObject({
      ...old,
      alongLapEdge: null,
      seam: null,
      rootWidthMm: null,
    });
  });

  it("an unanswered lapped edge is open on a lap joint, and no question on a tee", () => {
    expect([lapEdge("lap", null), lapEdge("lap", true), lapEdge("tee", null)]).toEqual([null, true, false]);
  });
});
