import { describe, expect, it } from "vitest";
import { assessBead, assess, emptyBeadContent, type BeadContent } from "@/lib/assess";
import { emptyDrawing, type Mark } from "@/lib/marks";
import { sheetDocument } from "@/lib/report";
import { metric } from "@/lib/units";

const ball = (id: string, x: number, radius: number, note = ""): Mark => ({
  id,
  imperfection: "spatter",
  shape: { kind: "point", at: { x, y: 300 }, radius },
  place: "beside",
  stretch: null,
  patterns: [],
  gauge: [],
  note,
});

function bead(marks: Mark[]): BeadContent {
  const scale = { kind: "two-points" as const, a: { x: 0, y: 0 }, b: { x: 1000, y: 0 }, lengthMm: 100 };
  return {
    ...emptyBeadContent,
    photos: [{ id: "p1", role: "face", drawing: { ...emptyDrawing, scale, marks } }],
  };
}

const facts = [{ id: "p1", sha256: "0".repeat(64), widthPx: 1000, heightPx: 800 }];
const sheet = (marks: Mark[]) =>
  sheetDocument(
    assessBead({
      id: "b",
      number: 1,
      revision: 1,
      createdAt: "2026-11-25T08:00:00.000Z",
      content: bead(marks),
      photos: facts,
    }),
    metric,
  );

describe("the marks on the sheet", () => {
  it("share a row when they are of one kind at one place, with all their numbers and the range of their sizes", () => {
    const marks = [
      ball("a", 100, 5),
      ball("b", 200, 10),
      ball("c", 300, 15, "sits on the toe"),
      ball("d", 400, 8),
    ];
    const rows = sheet(marks).marks;
    expect(rows.map(({ numbers, name }) => `${numbers} ${name}`)).toEqual([
      "1–2, 4 Spatter × 3",
      "3 Spatter",
    ]);
    // 10 px to the millimetre: radii of 5 and 10 px are diameters of 1 and 2 mm.
    expect(rows[0]?.size).toMatch(/^⌀ 1\.0 ± .* to 2\.0 ± .* mm$/);
  });

  it("lose nobody: every mark's number is on some row", () => {
    const marks = Array.from({ length: 12 }, (_, k) =>
      ball(`m${k}`, 50 + 60 * k, 4 + k, k % 3 === 0 ? "note" : ""),
    );
    const count = assess(bead(marks), facts).photos[0]?.marks.length;
    const numbers = sheet(marks).marks.flatMap(({ numbers: text }) =>
      text.split(", ").flatMap((part) => {
        const [from = 0, to = from] = part.split("–").map(Number);
        return Array.from({ length: to - from + 1 }, (_, k) => from + k);
      }),
    );
    expect(numbers.toSorted((a, b) => a - b)).toEqual(Array.from({ length: count ?? 0 }, (_, k) => k + 1));
  });
});
