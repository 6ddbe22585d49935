import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assessBead, emptyBeadContent } from "@/lib/assess";
import { beadTable, judgedCells, markTable, type ExchangeBead } from "@/lib/exchange";
import { tableToCsv, type Table } from "@/lib/exchange/table";
import { emptyDrawing, newMark } from "@/lib/marks";
import { arbWholeBead } from "./bead";
import { readCsv } from "./read-back";

const cell = (table: Table, row: number, heading: string) => {
  expect(table.columns).toContain(heading);
  return table.rows[row]?.[table.columns.indexOf(heading)];
};

const mark = {
  ...newMark("m1", "undercut", {
    kind: "line",
    points: [
      { x: 100, y: 200 },
      { x: 400, y: 200 },
    ],
  }),
  place: "upper-toe" as const,
  note: "=not a formula",
};
/** Two picks 200 px apart on 20 mm: 0.1 mm a pixel, so 300 px are 30 mm. */
const bead: ExchangeBead = {
  id: "b7",
  number: 7,
  revision: 2,
  createdAt: "2026-11-25T10:00:00.000Z",
  updatedAt: "2026-11-25T10:05:00.000Z",
  previous: null,
  content: {
    ...emptyBeadContent,
    title: "Lap, second try",
    setup: {
      ...emptyBeadContent.setup,
      process: "FCAW-S",
      electrodeClass: "E71T-11",
      volts: 17.5,
      joint: "lap",
    },
    photos: [
      {
        id: "p1",
        role: "face",
        drawing: {
          ...emptyDrawing,
          scale: { kind: "two-points", a: { x: 100, y: 500 }, b: { x: 300, y: 500 }, lengthMm: 20 },
          marks: [mark],
        },
      },
    ],
  },
  photos: [
    {
      id: "p1",
      sha256: "0".repeat(64),
      widthPx: 800,
      heightPx: 600,
      role: "face",
      format: "jpeg",
      bytes: 10,
    },
  ],
};

function tableBead(one: ExchangeBead) {
  const assessed = assessBead(one);
  return { ...one, judged: judgedCells(assessed), liesOn: null, measured: assessed.assessment.photos };
}

describe("table of beads", () => {
  it("names the job by its number and the weld as the drawing does, and neither where it lies on none", () => {
    const on = { ...tableBead(bead), liesOn: { job: 12, weld: "W-07" } };
    const table = beadTable([on, tableBead(bead), { ...on, liesOn: { job: 12, weld: null } }]);
    expect([0, 1, 2].map((row) => cell(table, row, "Job"))).toEqual([12, null, 12]);
    expect([0, 1, 2].map((row) => cell(table, row, "Weld"))).toEqual(["W-07", null, null]);
  });

  it("says what was recorded, in metric numbers, and leaves unknown cells empty", () => {
    const table = beadTable([tableBead(bead)]);
    expect(cell(table, 0, "Bead")).toBe(7);
    expect(cell(table, 0, "Electrode class")).toBe("E71T-11");
    expect(cell(table, 0, "Volts (V)")).toBe(17.5);
    expect(cell(table, 0, "Joint")).toBe("lap");
    expect(cell(table, 0, "Amps (A)")).toBeNull();
    expect(cell(table, 0, "Verdict")).toBeNull();
    expect(cell(table, 0, "Imperfections")).toBe("Undercut");
    expect(cell(table, 0, "Likeliest cause")).toEqual(expect.any(String));
  });

  it("names no cause for a bead without marks", () => {
    const table = beadTable([tableBead({ ...bead, content: { ...bead.content, photos: [] } })]);
    expect(cell(table, 0, "Likeliest cause")).toBeNull();
    expect(cell(table, 0, "Change to try")).toBeNull();
  });
});

describe("table of marks", () => {
  it("gives sizes with their uncertainty and the ISO 6520-1 number", () => {
    const table = markTable([tableBead(bead)]);
    expect(cell(table, 0, "ISO 6520-1")).toBe("501");
    expect(cell(table, 0, "Length (mm)")).toBeCloseTo(30, 6);
    expect(cell(table, 0, "Length, ± U with k = 2 (mm)")).toBeGreaterThan(0);
    expect(cell(table, 0, "Length read from")).toBe("photo");
    expect(cell(table, 0, "Depth (mm)")).toBeNull();
    expect(tableToCsv(table)).toContain(",'=not a formula,\r\n");
  });
});

describe("any beads", () => {
  it("give one row each, one row per mark, distinct headings, and CSV that reads back", () => {
    fc.assert(
      fc.property(fc.array(arbWholeBead, { maxLength: 2 }), (whole) => {
        const beads = whole.map((one) => tableBead(one.bead));
        const marks = beads.flatMap(({ content }) => content.photos.flatMap(({ drawing }) => drawing.marks));
        for (const [table, rows] of [
          [beadTable(beads), beads.length],
          [markTable(beads), marks.length],
        ] as const) {
          expect(table.rows).toHaveLength(rows);
          expect(new Set(table.columns).size).toBe(table.columns.length);
          for (const row of table.rows) expect(row).toHaveLength(table.columns.length);
          expect(readCsv(tableToCsv(table)).map((row) => row.length)).toEqual(
            Array.from({ length: rows + 1 }, () => table.columns.length),
          );
        }
      }),
      { numRuns: 15 },
    );
  });
});
