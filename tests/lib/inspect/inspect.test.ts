import { describe, expect, it } from "vitest";
import {
  calibrationDoubt,
  calibrationOn,
  instrumentLabel,
  InstrumentSchema,
  movedSince,
  openPoints,
  sealRecord,
} from "@/lib/inspect";
import { readRecord } from "@/lib/inspect/make-record";
import { pointSentences } from "@/lib/inspect/sentences";
import { pointWeights } from "@/lib/inspect/point-weights";
import { recordChanges } from "@/lib/inspect/record-changes";
import { worst } from "@/lib/inspect/weld-results";
import { beadOf, gauge, job, recordOf, signature, undercut } from "./build";

const codes = (change: Parameters<typeof recordOf>[0]) => recordOf(change).points.map(({ code }) => code);

describe("viewing conditions", () => {
  // ISO 17637:2003, clause 2: at least 350 lx, 500 lx recommended; within 600 mm; not under 30 degrees.
  it.each([
    [{ lightLux: 349.9 }, "light-low"],
    [{ lightLux: 499 }, "light-below-recommended"],
    [{ distanceMm: 601 }, "distance-far"],
    [{ angleDeg: 29 }, "angle-low"],
  ] as const)("%o is outside ISO 17637", (draft, code) => {
    expect(codes({ draft })).toContain(code);
  });

  it("on the limits themselves are within", () => {
    const found = codes({ draft: { lightLux: 350, distanceMm: 600, angleDeg: 30 } });
    for (const code of ["light-low", "distance-far", "angle-low"]) expect(found).not.toContain(code);
    expect(codes({ draft: { lightLux: 500 } })).not.toContain("light-below-recommended");
  });

  it("of the eye are not asked of a borescope, but what it was is", () => {
    const found = codes({ draft: { look: "remote", distanceMm: null, angleDeg: null } });
    expect(found).not.toContain("distance-missing");
    expect(found).toContain("remote-aid-missing");
  });
});

describe("what a record contains", () => {
  // ISO 17637, clause 5 (its list from memory): maker, object, material, joint, thickness, process, criteria, extent
  // with drawing, devices, date. Each left out alone is said alone.
  const part = (change: object) => ({ job: { parts: job.parts.map((one) => ({ ...one, ...change })) } });
  it.each([
    ["maker", { job: { maker: "" } }, "maker-missing"],
    ["process", { job: { process: null } }, "process-missing"],
    ["criteria", { job: { criteriaId: null } }, "criteria-missing"],
    ["material", part({ material: "" }), "part-incomplete"],
    ["thickness", part({ thicknessMm: null }), "part-incomplete"],
    ["drawing", part({ drawing: "" }), "part-incomplete"],
    ["joint", { job: { welds: job.welds.map((one) => ({ ...one, joint: null })) } }, "weld-incomplete"],
    ["extent", { draft: { welds: [{ weldId: "w1", seen: null, seenNote: "" }] } }, "extent-seen-unknown"],
    ["devices", { instruments: [] }, "instruments-none"],
    ["date", { draft: { examinedOn: null } }, "date-missing"],
    ["findings", { beads: [] }, "weld-without-bead"],
  ])("without %s says so", (_, change, code) => {
    const complete = codes({});
    expect(complete).not.toContain(code);
    expect(codes(change)).toContain(code);
  });

  it("has a sentence and a weight for every point", () => {
    expect(Object.keys(pointSentences).sort()).toEqual(Object.keys(pointWeights).sort());
  });
});

describe("calibration", () => {
  const due = InstrumentSchema.parse({
    kind: "calliper",
    name: "C",
    calibratedOn: "2026-01-10",
    dueOn: "2026-11-25",
  });
  it.each([
    ["2026-11-25", "valid"],
    ["2026-11-26", "overdue"],
    ["2026-01-09", "not-yet"],
  ])("on %s is %s", (day, state) => {
    expect(calibrationOn(due, day)).toBe(state);
  });

  it("is not asked of a magnifier, and its want is said of a gauge", () => {
    expect(calibrationOn({ ...due, kind: "magnifier", dueOn: null }, "2026-11-25")).toBe("needs-none");
    expect(calibrationOn({ ...due, dueOn: null }, "2026-11-25")).toBe("not-recorded");
    expect(codes({ instruments: [{ ...gauge, dueOn: "2026-11-24" }] })).toContain("instrument-overdue");
  });
});

describe("readings", () => {
  const taken = (instrument: string) => {
    const bead = beadOf(1);
    const readings = [{ quantity: "throat" as const, value: 4, instrument, resolution: 0.5 }];
    return {
      beads: [{ ...bead, content: { ...bead.content, judgement: { ...bead.content.judgement, readings } } }],
    };
  };

  it("are taken with an instrument that is ticked as used, serial number and all", () => {
    const code = "reading-instrument-not-ticked";
    expect(codes(taken(instrumentLabel(gauge)))).not.toContain(code);
    expect(codes(taken("fillet gauge, leaf"))).toContain(code);
    expect(
      codes({ ...taken(instrumentLabel(gauge)), instruments: [{ ...gauge, serial: "other" }] }),
    ).toContain(code);
  });

  it("name the longest gauge within the 80 characters a reading holds, its serial number whole", () => {
    const long = instrumentLabel({ ...gauge, name: "n".repeat(80), serial: "s".repeat(60) });
    expect(long).toHaveLength(80);
    expect(long.endsWith(`, no. ${"s".repeat(60)}`)).toBe(true);
    expect(calibrationDoubt({ ...gauge, dueOn: "2026-01-01" }, "2026-01-02")).toContain("2026-01-01");
    expect(calibrationDoubt({ ...gauge, dueOn: "2026-01-01" }, "2026-01-01")).toBeNull();
  });
});

describe("the result", () => {
  it("is the worst of its welds, and nothing looked at is open", () => {
    expect(worst(["accepted", "open", "not-accepted"])).toBe("not-accepted");
    expect(worst(["accepted", "open"])).toBe("open");
    expect(worst([])).toBe("open");
  });

  // ISO 5817, 1.7, level C, over 3 mm: h <= min(0.1 t, 0.5 mm). On 10 mm: 0.8 mm read is too deep.
  it("is not accepted for an undercut deeper than ISO 5817 allows, with the clause and its numbers", () => {
    const deep = undercut([
      { quantity: "depth", valueMm: 0.8, instrument: "undercut gauge", resolutionMm: 0.05 },
    ]);
    const record = recordOf({ beads: [beadOf(1, {}, [deep])] });
    expect(record.result).toBe("not-accepted");
    const row = record.beads[0]?.verdict?.rows.find(({ result }) => result === "fails");
    expect(row?.value).toBe(0.8);
    expect(row?.limit).toBe(0.5);
    expect(row?.clause).toContain("1.7");
  });

  it("is open while the depth of an undercut is not read", () => {
    expect(recordOf().result).toBe("open");
    expect(openPoints(recordOf()).map(({ code }) => code)).toEqual(["bead-open"]);
  });
});

describe("a sealed record", () => {
  const { text, record } = sealRecord(recordOf(), null, signature);

  it("reads back as itself and holds marks, digests and sizes, but no name", () => {
    expect(readRecord(text)).toEqual(record);
    expect(text).toContain("W-07");
    expect(text).not.toContain("Quenby");
    expect(record.beads[0]?.photos[0]?.sha256).toMatch(/^0+1$/);
    const size = record.beads[0]?.sizes[0]?.length;
    // 216 and 36 px apart at 20 px to the millimetre.
    expect(size?.value).toBeCloseTo(Math.hypot(216, 36) / 20, 1);
    expect(size?.expandedUncertainty).toBeGreaterThan(0);
    expect(record.beads[0]?.marks[0]?.size.metric).toContain("mm");
    expect(record.beads[0]?.marks[0]?.size.inch).toContain("in");
  });

  it("is the same text for the same content", () => {
    expect(sealRecord(recordOf(), null, signature).text).toBe(text);
  });
});

describe("the comparison of two records", () => {
  it("is empty for the same record", () => {
    expect(recordChanges(recordOf(), recordOf())).toEqual([]);
  });

  it("names what is otherwise, new and gone", () => {
    expect(recordChanges(recordOf(), recordOf({ draft: { lightLux: 300 } }))).toEqual([
      "Viewing conditions › Light at the surface: was 520 lx, now 300 lx",
      "Points › The light was 300 lx; ISO 17637 asks for at least 350 lx. New.",
    ]);
    const gone = recordChanges(recordOf(), recordOf({ instruments: [] }));
    expect(gone.some((line) => /^Instruments › Gauge 2: no longer there/.test(line))).toBe(true);
  });

  it("names a drawing that moved", () => {
    const moved = {
      ...undercut(),
      shape: {
        kind: "line" as const,
        points: [
          { x: 300, y: 600 },
          { x: 900, y: 700 },
        ],
      },
    };
    const lines = recordChanges(recordOf(), recordOf({ beads: [beadOf(1, {}, [moved])] }));
    expect(lines.join()).toContain("Drawing on photo 1: changed");
    expect(lines.some((line) => line.startsWith("Bead 5 › Mark 1:1: was "))).toBe(true);
  });
});

describe("beads since signing", () => {
  const record = recordOf();
  const now = { id: "b1", number: 5, revision: 3, weldId: "w1", photos: record.beads[0]?.photos ?? [] };
  it("that did not move say nothing", () => {
    expect(movedSince(record, [now])).toEqual([]);
  });
  it.each([
    ["a later revision", [{ ...now, revision: 4 }], /revision 4/],
    ["another photo", [{ ...now, photos: [] }], /other photos/],
    ["off the weld", [{ ...now, weldId: null }], /no longer on its weld/],
    ["a further bead", [now, { ...now, id: "b2", number: 6 }], /Bead 6 was attached/],
  ])("are named: %s", (_, beads, words) => {
    expect(movedSince(record, beads).join(" ")).toMatch(words);
  });
});
