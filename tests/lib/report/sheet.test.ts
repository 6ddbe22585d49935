import { describe, expect, it } from "vitest";
import { assessBead, emptyBeadContent } from "@/lib/assess";
import { emptyDrawing, newMark } from "@/lib/marks";
import { sheetDocument } from "@/lib/report";
import { emptyRunSetup } from "@/lib/setup";
import type { ImperfectionId } from "@/lib/trade";
import { metric } from "@/lib/units";

const content = {
  ...emptyBeadContent,
  setup: {
    ...emptyRunSetup,
    process: "FCAW-S" as const,
    electrodeClass: "E71T-11",
    polarity: "DCEP" as const,
    joint: "tee" as const,
    thicknessMm: 10,
  },
  judgement: {
    ...emptyBeadContent.judgement,
    criteriaId: "iso-5817-c",
    lookedFor: ["crater-crack" as const, "undercut" as const],
  },
  photos: [{ id: "p1", role: "face" as const, drawing: emptyDrawing }],
};
const facts = [{ id: "p1", sha256: "0".repeat(64), widthPx: 1000, heightPx: 800 }];
const sheet = sheetDocument(
  assessBead({
    id: "b",
    number: 7,
    revision: 3,
    createdAt: "2026-11-25T08:00:00.000Z",
    content,
    photos: facts,
  }),
  metric,
);

describe("sheetDocument", () => {
  it("carries set-up, finding, change, causes, verdict and cautions of one bead", () => {
    expect(sheet.setup).toContainEqual({ label: "Wire or rod", value: "E71T-11" });
    expect(sheet.setupFindings.join()).toMatch(/DCEN/);
    expect(sheet.change?.step).toBe("From DCEP to DCEN");
    expect(sheet.causes[0]?.name).toBe("Wrong polarity");
    expect(sheet.verdict?.word).toBe("Cannot say yet");
    expect(sheet.cautions.length).toBeGreaterThan(3);
  });

  it("gives a line of its own to no clause that only says what another says", () => {
    const clauses = sheet.verdict?.clauses ?? [];
    const details = clauses.map(({ result, detail }) => `${result} ${detail}`);
    expect(new Set(details).size).toBe(details.length);
    const met = clauses.find(({ result }) => result === "Met");
    expect(met?.title).toMatch(/Crater crack/);
    expect(met?.title).toMatch(/Undercut/);
  });

  it("names everything nobody looked for, once", () => {
    const names = sheet.verdict?.notLookedFor ?? [];
    expect(names).toContain("Burn-through");
    expect(new Set(names).size).toBe(names.length);
  });

  it("lists no causes under tool marks, but says where they come from", () => {
    const marked = (ids: readonly ImperfectionId[]) => {
      const marks = ids.map((id, i) =>
        newMark(`m${i}`, id, { kind: "point", at: { x: 50, y: 60 }, radius: null }),
      );
      const photos = [{ id: "p1", role: "face" as const, drawing: { ...emptyDrawing, marks } }];
      const setup = { ...emptyRunSetup, joint: "tee" as const };
      return sheetDocument(
        assessBead({
          id: "b",
          number: 7,
          revision: 3,
          createdAt: "2026-11-25T08:00:00.000Z",
          content: { ...content, setup, photos },
          photos: facts,
        }),
        metric,
      );
    };
    const ground = marked(["grinding-mark"]);
    expect([ground.causes, ground.change]).toEqual([[], null]);
    expect(ground.causeless).toEqual([expect.stringContaining("the disc made it")]);
    const both = marked(["grinding-mark", "undercut", "convex-bead"]);
    expect([both.causes.length, both.causeless.length]).toEqual([3, 1]);
    expect(both.change).not.toBeNull();
  });

  it("numbers a convex bead by the joint", () => {
    const number = (joint: "tee" | "groove-open" | null) => {
      const marks = [newMark("m", "convex-bead", { kind: "point", at: { x: 5, y: 5 }, radius: null })];
      const photos = [{ id: "p1", role: "face" as const, drawing: { ...emptyDrawing, marks } }];
      const made = sheetDocument(
        assessBead({
          id: "b",
          number: 7,
          revision: 3,
          createdAt: "2026-11-25T08:00:00.000Z",
          content: { ...content, setup: { ...content.setup, joint }, photos },
          photos: facts,
        }),
        metric,
      );
      return made.marks.map(({ iso6520 }) => iso6520);
    };
    // ISO 6520-1: 502 excess weld metal (butt weld), 503 excessive convexity (fillet weld).
    expect([number("tee"), number("groove-open"), number(null)]).toEqual([
      ["503"],
      ["502"],
      ["503, butt weld 502"],
    ]);
  });
});
