import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { canonicalJson } from "@/lib/base";
import {
  beadForWeld,
  daysInOrder,
  drawSample,
  InspectionDraftSchema,
  JobContentSchema,
  openWelds,
  recordSections,
  weldChecklist,
  type InspectionDraft,
} from "@/lib/inspect";
import { draftSaysMore, jobSaysMore, textSaysMore } from "@/lib/inspect/later-fields";
import { takenOf } from "@/lib/inspect/sample";
import { draft, job, recordOf, soundBead } from "./build";

const weld = job.welds[0]!;
const asking = (change: Partial<typeof weld>) => ({ welds: [{ ...weld, ...change }] });
const codesAt = (change: Parameters<typeof recordOf>[0]) => {
  const record = recordOf({ beads: [soundBead()], ...change });
  return { result: record.weldResults[0]?.result, codes: record.points.map(({ code }) => code), record };
};

describe("what is asked of a weld", () => {
  it("is accepted where bead, size, length, extent and certificate agree, with nothing left to say", () => {
    const { result, codes } = codesAt({ job: asking({ legMm: 6 }) });
    expect([result, codes]).toEqual(["accepted", []]);
  });

  // 6.5 mm leg = 4.6 mm throat between square plates: a = z / sqrt(2), ISO 2553.
  it.each([
    ["another leg", asking({ legMm: 8 }), "size-other"],
    ["another throat", asking({ throatMm: 4.6 }), "size-other"],
    ["a longer weld", asking({ lengthMm: 310 }), "length-short"],
  ])("and is not there (%s) keeps the weld open and says so with a way out", (_, asked, code) => {
    const { result, codes, record } = codesAt({ job: asked });
    expect(result).toBe("open");
    expect(codes).toContain(code);
    expect(openWelds(record)[0]?.reasons.some(({ closing }) => closing.length > 10)).toBe(true);
  });

  it("as a throat agrees with the leg that it comes to", () => {
    expect(codesAt({ job: asking({ throatMm: 6 / Math.SQRT2 }) }).result).toBe("accepted");
  });

  it("goes to the bead that is begun for it: leg, or the leg of the throat, and the weld's own criteria", () => {
    const began = (change: Partial<typeof weld>) => {
      const { welds } = { ...job, ...asking(change) };
      return beadForWeld({ number: 1, content: job }, welds[0]!);
    };
    expect(began({ legMm: 8 }).setup.targetLegMm).toBe(8);
    expect(began({ throatMm: 5 }).setup.targetLegMm).toBeCloseTo(5 * Math.SQRT2, 12);
    expect(began({}).setup.targetLegMm).toBeNull();
    expect(began({ criteriaId: "aws-d1-1-static" }).judgement.criteriaId).toBe("aws-d1-1-static");
    expect(began({}).judgement.criteriaId).toBe("iso-5817-c");
  });

  it("by criteria of its own is judged by those, and said so where the bead was judged by others", () => {
    const { codes } = codesAt({ job: asking({ criteriaId: "iso-5817-b" }) });
    expect(codes).toContain("bead-other-criteria");
    expect(codesAt({ job: { ...asking({ criteriaId: "iso-5817-c" }), criteriaId: null } }).codes).toEqual([]);
  });
});

describe("the inspector's certificate", () => {
  const held = (expiresOn: string | null, certificate = "VT-204"): Partial<InspectionDraft> => ({
    qualification: { certificate, level: "2", expiresOn },
  });
  it.each([
    ["2026-11-25", "accepted", []],
    ["2026-11-24", "open", ["certificate-expired"]],
    [null, "accepted", ["certificate-expiry-unknown"]],
  ] as const)("that holds until %s leaves the weld %s", (until, wanted, codes) => {
    const found = codesAt({ draft: held(until) });
    expect([found.result, found.codes]).toEqual([wanted, codes]);
  });

  it("excuses no fault and is a note where it is not recorded", () => {
    expect(codesAt({ draft: { qualification: undefined } }).codes).toEqual(["certificate-missing"]);
  });
});

describe("the checklist of a weld", () => {
  const listOf = (change: Parameters<typeof recordOf>[0]) => weldChecklist(codesAt(change).record, "w1");
  it("sets what was asked against what was seen, all done only where the weld is accepted", () => {
    const all = listOf({ job: asking({ legMm: 6 }) });
    expect(all.map(({ what }) => what)).toEqual([
      "Extent",
      "Size",
      "Length",
      "Criteria",
      "Readings",
      "Looked for",
      "Gauges",
      "Certificate",
    ]);
    expect(all.every(({ isDone }) => isDone)).toBe(true);
  });

  it.each([
    [
      "Extent",
      { draft: { welds: [{ weldId: "w1", seen: { kind: "percent", percent: 20 }, seenNote: "" }] } },
    ],
    ["Size", { job: asking({ legMm: 8 }) }],
    ["Length", { job: asking({ lengthMm: 310 }) }],
    ["Gauges", { instruments: [] }],
    [
      "Certificate",
      { draft: { qualification: { certificate: "VT-204", level: "", expiresOn: "2026-01-01" } } },
    ],
  ] as const)("leaves %s open alone", (what, change) => {
    const open = listOf(change as Parameters<typeof recordOf>[0]).filter(({ isDone }) => !isDone);
    expect(open.map((one) => one.what)).toEqual([what]);
  });

  it("calls criteria by their names: of a verdict, of the job, of the book where no bead was judged", () => {
    const askedBy = (change: Parameters<typeof recordOf>[0]) =>
      listOf(change).find(({ what }) => what === "Criteria")?.asked;
    expect(askedBy({})).toBe("ISO 5817 level C, 2014");
    expect(askedBy({ beads: [] })).toBe("ISO 5817 level C");
    expect(askedBy({ job: asking({ criteriaId: "iso-5817-b" }), beads: [] })).toMatch(/^ISO 5817.*B.*2014/);
  });

  it("is all done exactly where the weld is accepted, over every pair of faults", () => {
    const faults = [
      {},
      { job: asking({ legMm: 8 }) },
      { job: asking({ lengthMm: 310 }) },
      { instruments: [] },
      { beads: [] },
      { job: asking({ asked: null }) },
      { draft: { qualification: { certificate: "V", level: "", expiresOn: "2026-01-01" } } },
    ];
    for (const one of faults)
      for (const other of faults) {
        const { record, result } = codesAt({ ...one, ...other } as Parameters<typeof recordOf>[0]);
        expect(weldChecklist(record, "w1").every(({ isDone }) => isDone)).toBe(result === "accepted");
      }
  });
});

describe("a calibration", () => {
  it("is not due before it was done", () => {
    expect(daysInOrder({ calibratedOn: "2026-05-01", dueOn: "2026-04-30" })).toBe(false);
    expect(daysInOrder({ calibratedOn: "2026-05-01", dueOn: "2026-05-01" })).toBe(true);
    expect(daysInOrder({ calibratedOn: null, dueOn: "2026-04-30" })).toBe(true);
  });
});

describe("a sample", () => {
  const welds = Array.from({ length: 40 }, (_, i) => ({
    id: `w${i}`,
    partId: i % 2 === 0 ? "p1" : "p2",
    welderId: i < 30 ? "anna" : null,
    welderMark: i < 30 ? "" : "W-9",
  }));
  const share = (percent: number) => ({ kind: "share", percent }) as const;

  it("is as large as the plan says in each lot, never none, rounded up", () => {
    // 5 % of 20 is one; of 21 it is two.
    expect([takenOf(20, share(5)), takenOf(21, share(5)), takenOf(3, share(5))]).toEqual([1, 2, 1]);
    expect(drawSample(welds, share(10), "job", "s")).toHaveLength(4);
    const byWelder = drawSample(welds, share(5), "welder", "s");
    const of = (from: number, to: number) =>
      byWelder.filter((id) => Number(id.slice(1)) >= from && Number(id.slice(1)) < to);
    expect([of(0, 30).length, of(30, 40).length]).toEqual([2, 1]);
    expect(drawSample(welds, { kind: "count", count: 3 }, "part", "s")).toHaveLength(6);
  });

  it("is the same for the same seed and another for another", () => {
    const one = drawSample(welds, share(25), "job", "one");
    expect(drawSample(welds, share(25), "job", "one")).toEqual(one);
    expect(drawSample(welds, share(25), "job", "two")).not.toEqual(one);
  });

  it("takes every weld equally often over many seeds", () => {
    // Of 2000 draws of 4 in 40 each weld is expected 200 times; chi square with 39 degrees of freedom stays under 72.1
    // in 999 of 1000 (tables of the chi square distribution), a little less because draws take without putting back.
    const counts = new Map(welds.map(({ id }) => [id, 0]));
    for (let i = 0; i < 2000; i += 1)
      for (const id of drawSample(welds, share(10), "job", `seed ${i}`)) counts.set(id, counts.get(id)! + 1);
    const chi = [...counts.values()].reduce((sum, count) => sum + (count - 200) ** 2 / 200, 0);
    expect(chi).toBeLessThan(72.1);
  });

  it("stands on the record with its plan, why, and what it was drawn from and with", () => {
    const sample = {
      ...{ take: share(5), lot: "welder" as const, seed: "k3", draws: 2, why: "clause 8.2 of the contract" },
      ...{ from: ["w1", "w2"], chosen: ["w1"] },
    } as const;
    const record = recordOf({
      draft: { sample: { ...sample, from: [...sample.from], chosen: [...sample.chosen] } },
    });
    const text = JSON.stringify(recordSections(record).find(({ title }) => title === "Sample"));
    for (const words of ["5 % of each welder’s welds", "clause 8.2", "seed k3, draw 2", "2 welds"])
      expect(text).toContain(words);
  });
});

describe("fields that came later", () => {
  it("leave no trace where nothing is said, so that what was sealed before keeps its bytes", () => {
    const content = { title: "Bracket", welds: [{ id: "w1", number: "W1" }] };
    const plain = canonicalJson(JobContentSchema.parse(content));
    const said = {
      ...content,
      customer: " ",
      welds: [{ id: "w1", number: "W1", legMm: null, throatMm: null, criteriaId: "" }],
    };
    expect(canonicalJson(JobContentSchema.parse(said))).toBe(plain);
    const empty = {
      reportNumber: "",
      sample: null,
      qualification: { certificate: "", level: " ", expiresOn: null },
    };
    expect(canonicalJson(InspectionDraftSchema.parse(empty))).toBe(
      canonicalJson(InspectionDraftSchema.parse({})),
    );
    expect(jobSaysMore(JobContentSchema.parse(said))).toBe(false);
  });

  it("are told by an archive, each of them alone", () => {
    const later = [{ legMm: 6 }, { throatMm: 4 }, { criteriaId: "iso-5817-b" }];
    for (const one of later)
      expect(
        jobSaysMore(JobContentSchema.parse({ title: "B", welds: [{ id: "w", number: "1", ...one }] })),
      ).toBe(true);
    expect(jobSaysMore(JobContentSchema.parse({ title: "B", customer: "C" }))).toBe(true);
    expect(draftSaysMore(InspectionDraftSchema.parse({ reportNumber: "7" }))).toBe(true);
    expect(draftSaysMore(draft)).toBe(true);
    expect(textSaysMore(JSON.stringify(recordOf()))).toBe(true);
    expect(textSaysMore(JSON.stringify(recordOf({ draft: { qualification: undefined } })))).toBe(false);
    expect(textSaysMore("no record")).toBe(false);
  });

  it("keep what was written in any combination through the schema", () => {
    const weldArb = fc.record({
      legMm: fc.option(fc.integer({ min: 1, max: 40 })),
      throatMm: fc.option(fc.integer({ min: 1, max: 40 })),
    });
    fc.assert(
      fc.property(weldArb, ({ legMm, throatMm }) => {
        const [parsed] = JobContentSchema.parse({
          title: "B",
          welds: [{ id: "w", number: "1", legMm, throatMm }],
        }).welds;
        expect([parsed?.legMm ?? null, parsed?.throatMm ?? null]).toEqual([legMm, throatMm]);
      }),
      { seed: 5, numRuns: 50 },
    );
  });
});
