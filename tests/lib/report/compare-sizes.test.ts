import { describe, expect, it } from "vitest";
import { assessBead, emptyBeadContent, type BeadContent } from "@/lib/assess";
import { emptyDrawing, newMark, type Drawing, type Mark } from "@/lib/marks";
import { compareSizes, type SheetBead } from "@/lib/report";
import { inch, metric } from "@/lib/units";

/** 20 px to the millimetre. */
const scale: Drawing["scale"] = {
  kind: "two-points",
  a: { x: 100, y: 1200 },
  b: { x: 2100, y: 1200 },
  lengthMm: 100,
};
const undercut = (id: string, mm: number): Mark =>
  newMark(id, "undercut", {
    kind: "line",
    points: [
      { x: 200, y: 700 },
      { x: 200 + 20 * mm, y: 700 },
    ],
  });
const reading = (quantity: "leg-1" | "toe-angle", value: number, resolution = 0.5) => ({
  quantity,
  value,
  resolution,
  instrument: "fillet gauge",
});

function bead(marks: readonly Mark[], readings: readonly ReturnType<typeof reading>[] = [], scaled = true) {
  const drawing = { ...emptyDrawing, scale: scaled ? scale : null, marks: [...marks] };
  const content: BeadContent = {
    ...emptyBeadContent,
    judgement: { ...emptyBeadContent.judgement, readings: [...readings] },
    photos: [{ id: "p", role: "face", drawing }],
  };
  const photos = [{ id: "p", sha256: "a".repeat(64), widthPx: 2400, heightPx: 1600 }];
  return assessBead({
    id: "b",
    number: 1,
    revision: 1,
    content,
    photos,
    createdAt: "2026-11-26T08:00:00.000Z",
  } as SheetBead);
}
const row = (rows: ReturnType<typeof compareSizes>, label: string) => rows.find((one) => one.label === label);

describe("the sizes of two beads", () => {
  it("states a difference with the uncertainty of both together", () => {
    const rows = compareSizes(
      bead([], [reading("leg-1", 6, 0.5)]),
      bead([], [reading("leg-1", 8, 0.5)]),
      metric,
    );
    const leg = rows[0]!;
    expect(leg.before).toBe("6.0 ± 0.3 mm");
    expect(leg.after).toBe("8.0 ± 0.3 mm");
    // A step of 0.5 mm leaves u = 0.5 / root 12 = 0.144, U = 0.289 (JCGM 100:2008, F.2.2.1); of two, root 2 times that: 0.41, printed rounded up.
    expect(leg.difference).toBe("2.0 ± 0.5 mm more");
    expect(leg.seen).toBe(true);
  });

  it("says that none is seen where the doubt is as large", () => {
    const rows = compareSizes(
      bead([undercut("a", 20)], [reading("leg-1", 6)]),
      bead([undercut("a", 20.2)], [reading("leg-1", 6.3)]),
      metric,
    );
    for (const one of rows) expect([one.difference, one.seen]).toEqual(["No difference seen.", false]);
    expect(rows.map(({ label }) => label)).toContain("Undercut, longest");
  });

  it("law: turned round, more is less and the figure is the same; with itself none is seen", () => {
    const [a, b] = [bead([undercut("a", 12), undercut("b", 3)]), bead([undercut("a", 31)])];
    const [there, back] = [compareSizes(a, b, metric), compareSizes(b, a, metric)];
    expect(there.map(({ label }) => label)).toEqual(back.map(({ label }) => label));
    for (const one of there)
      expect(row(back, one.label)?.difference.replace("less", "more")).toBe(
        one.difference.replace("less", "more"),
      );
    expect(row(there, "Undercut, longest")?.difference).toMatch(/ more$/);
    expect(row(back, "Undercut, longest")?.difference).toMatch(/ less$/);
    expect(compareSizes(a, a, metric).every(({ seen }) => seen === false)).toBe(true);
    expect(row(there, "Undercut, length of all")?.before).toMatch(/^15/);
  });

  it("states none where one was not read or has no scale, nor of a patch that was counted by eye", () => {
    const one = compareSizes(bead([undercut("a", 12)]), bead([undercut("a", 30)], [], false), metric);
    expect(one.map(({ difference, seen }) => [difference, seen])).toEqual([
      ["Only one of the two has it.", null],
    ]);
    const ring = newMark("r", "spatter", { kind: "point", at: { x: 900, y: 900 }, radius: 100 });
    expect(compareSizes(bead([{ ...ring, aboutCount: 30 }]), bead([ring]), metric)[0]?.before).toBeNull();
    expect(compareSizes(bead([]), bead([]), inch)).toEqual([]);
  });
});
