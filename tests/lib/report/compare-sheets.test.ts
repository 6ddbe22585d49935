import { describe, expect, it } from "vitest";
import { assessBead, emptyBeadContent, type BeadContent } from "@/lib/assess";
import { compareSheets, sheetDocument, type SheetBead } from "@/lib/report";
import { DrawingSchema } from "@/lib/marks";
import { metric } from "@/lib/units";

function bead(number: number, change: Partial<BeadContent["setup"]>, marked: readonly string[]): SheetBead {
  const marks = marked.map((imperfection, i) => ({
    id: `m${i}`,
    imperfection,
    shape: { kind: "point", at: { x: 10 + i, y: 10 }, radius: null },
    place: "face",
    stretch: "run",
    patterns: [],
    gauge: [],
    note: "",
  }));
  const drawing = DrawingSchema.parse({ schemaVersion: 1, scale: null, weldLine: null, marks });
  return {
    id: `b${number}`,
    number,
    revision: 1,
    createdAt: "2026-11-25T10:00:00.000Z",
    updatedAt: "2026-11-25T10:00:00.000Z",
    previous: null,
    content: {
      ...emptyBeadContent,
      title: `Bead ${number}`,
      setup: { ...emptyBeadContent.setup, process: "FCAW-S", ...change },
      photos: [{ id: "p", role: "face", drawing }],
    },
    photos: [
      { id: "p", role: "face", sha256: "a".repeat(64), widthPx: 100, heightPx: 80, format: "jpeg", bytes: 1 },
    ],
  } as unknown as SheetBead;
}

const sheet = (one: SheetBead) => sheetDocument(assessBead(one), metric);

describe("two beads side by side", () => {
  it("say what is gone, still there and new, and which settings changed", () => {
    const before = sheet(bead(1, { ctwdMm: 25, volts: 18 }, ["undercut", "spatter"]));
    const after = sheet(bead(2, { ctwdMm: 19, volts: 18 }, ["spatter", "crater-crack"]));
    const found = compareSheets(before, after);
    expect(found.gone.map(({ name }) => name)).toEqual(["Undercut"]);
    expect(found.still.map(({ name }) => name)).toEqual(["Spatter"]);
    expect(found.fresh).toHaveLength(1);
    expect(found.setup).toHaveLength(1);
    expect(found.setup[0]).toMatchObject({
      before: expect.stringContaining("25"),
      after: expect.stringContaining("19"),
    });
  });

  it("count several of a kind as that kind, with how many they were", () => {
    const before = sheet(bead(1, {}, ["spatter", "spatter", "spatter"]));
    const after = sheet(bead(2, {}, ["spatter", "spatter"]));
    const found = compareSheets(before, after);
    expect([found.gone, found.fresh]).toEqual([[], []]);
    expect(found.still).toEqual([{ name: "Spatter", before: ["× 3: no scale"], after: ["× 2: no scale"] }]);
  });

  it("turned round, gone and new change places; a bead beside itself differs in nothing", () => {
    const before = sheet(bead(1, { volts: 18 }, ["undercut"]));
    const after = sheet(bead(2, { volts: 20 }, ["spatter"]));
    const one = compareSheets(before, after);
    const other = compareSheets(after, before);
    expect(other.fresh.map(({ name }) => name)).toEqual(one.gone.map(({ name }) => name));
    expect(other.gone.map(({ name }) => name)).toEqual(one.fresh.map(({ name }) => name));
    expect(compareSheets(before, before)).toMatchObject({ gone: [], fresh: [], setup: [] });
  });
});
