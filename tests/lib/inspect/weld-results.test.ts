import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assessBead } from "@/lib/assess";
import {
  instrumentKinds,
  InspectionDraftSchema,
  InstrumentSchema,
  JobContentSchema,
  makeRecord,
  openWelds,
  wholeWeld,
  type Extent,
  type Instrument,
  type SignedBead,
} from "@/lib/inspect";
import { signBead } from "@/lib/inspect/sign-bead";
import { weldResults, type WeldsInput } from "@/lib/inspect/weld-results";
import { type InspectionResult } from "@/lib/inspect/signed-record";
import { beadOf, recordOf, soundBead, undercut } from "./build";
import { inDepth } from "../../setup/in-depth";

type ResultsOf = typeof weldResults;
const runs = { numRuns: inDepth(1000, 3000), seed: 20261126 };

/** Whole numbers only, so that the oracle below can compare without rounding. */
const arbExtent = (least: number): fc.Arbitrary<Extent> =>
  fc.oneof(
    fc.record({ kind: fc.constant("percent" as const), percent: fc.constantFrom(least, 20, 50, 99, 100) }),
    fc.record({ kind: fc.constant("length" as const), lengthMm: fc.constantFrom(least, 60, 150, 299, 300) }),
  );
const maybe = <T>(arb: fc.Arbitrary<T>) => fc.option(arb, { nil: null, freq: 6 });
const days = ["2026-11-24", "2026-11-25", "2026-11-26"] as const;
const gauges = ["A", "B", "C"] as const;
const arbDay = fc.constantFrom(...days);

const arbInstrument: fc.Arbitrary<Instrument> = fc
  .record({
    kind: fc.constantFrom(...instrumentKinds),
    name: fc.constantFrom(...gauges),
    calibratedOn: maybe(arbDay),
    dueOn: maybe(arbDay),
  })
  .map((one) => InstrumentSchema.parse(one));

const base = signBead(assessBead(beadOf(1, {}, [undercut()])));
const arbGauges = fc.array(fc.constantFrom(...gauges), { maxLength: 2 });

/** Beads as a record holds them: where they lie, how they were judged, and what they were read with. */
const arbBead: fc.Arbitrary<SignedBead> = fc
  .record({
    weldId: fc.constantFrom("w1", "w2"),
    result: fc.constantFrom<InspectionResult>("accepted", "accepted", "accepted", "open", "not-accepted"),
    whole: arbGauges,
    marks: arbGauges,
  })
  .map(({ weldId, result, whole, marks }) => ({
    ...base,
    weldId,
    result,
    judgement: {
      ...base.judgement,
      readings: whole.map((instrument) => ({ quantity: "throat", value: 4, instrument, resolution: 0.1 })),
    },
    photos: base.photos.map((photo) => ({
      ...photo,
      drawing: {
        ...photo.drawing,
        marks: photo.drawing.marks.map((mark) => ({
          ...mark,
          gauge: marks.map((instrument) => ({
            quantity: "depth" as const,
            valueMm: 0.2,
            instrument,
            resolutionMm: 0.1,
          })),
        })),
      },
    })),
  }));

const arbInput: fc.Arbitrary<WeldsInput> = fc
  .record({
    welds: fc.tuple(...["w1", "w2"].map((id) => arbWeld(id))),
    looked: fc.array(fc.record({ weldId: fc.constantFrom("w1", "w2"), seen: maybe(arbExtent(0)) }), {
      maxLength: 3,
    }),
    examinedOn: maybe(arbDay),
    instruments: fc.array(arbInstrument, { maxLength: 4 }),
    beads: fc.array(arbBead, { maxLength: 4 }),
  })
  .map(({ welds, looked, examinedOn, ...rest }) => ({
    ...rest,
    job: JobContentSchema.parse({ title: "Job", welds }),
    draft: InspectionDraftSchema.parse({ examinedOn, welds: looked }),
  }));

function arbWeld(id: string) {
  return fc.record({
    id: fc.constant(id),
    number: fc.constant(id.toUpperCase()),
    lengthMm: maybe(fc.constantFrom(100, 300, 1000)),
    asked: maybe(arbExtent(1)),
  });
}

/** What a reader of the record would check by hand: whether all that was asked of a weld was seen. */
function allSeen({ job, draft }: WeldsInput, weldId: string): boolean {
  const weld = job.welds.find(({ id }) => id === weldId);
  const said = draft.welds.filter((one) => one.weldId === weldId);
  const [asked, seen] = [weld?.asked ?? null, said.length === 1 ? (said[0]?.seen ?? null) : null];
  if (asked === null || seen === null) return false;
  if (seen.kind === "percent" && seen.percent === 100) return true;
  if (asked.kind === "percent" && seen.kind === "percent") return seen.percent >= asked.percent;
  if (asked.kind === "length" && seen.kind === "length") return seen.lengthMm >= asked.lengthMm;
  const long = weld?.lengthMm ?? null;
  if (long === null) return false;
  // In hundredths of a millimetre: whole numbers on both sides.
  const hundredths = (one: Extent) => (one.kind === "percent" ? one.percent * long : one.lengthMm * 100);
  return hundredths(seen) >= hundredths(asked);
}

/** Whether every reading on a weld was taken with gauges that are ticked and all in date that day. */
function allRead({ draft: { examinedOn }, instruments, beads }: WeldsInput, weldId: string): boolean {
  const used = beads
    .filter((bead) => bead.weldId === weldId)
    .flatMap(({ judgement, photos }) => [
      ...judgement.readings.map(({ instrument }) => instrument),
      ...photos.flatMap(({ drawing }) =>
        drawing.marks.flatMap(({ gauge }) => gauge.map((one) => one.instrument)),
      ),
    ]);
  return used.every((name) => {
    const named = instruments.filter((one) => one.name === name);
    if (named.length === 0 || examinedOn === null) return false;
    return named.every(
      ({ dueOn, calibratedOn }) =>
        dueOn !== null && dueOn >= examinedOn && (calibratedOn === null || calibratedOn <= examinedOn),
    );
  });
}

/** Never "accepted" while not all was seen, or a gauge was not valid, or a bead is not accepted. */
const neverTooMuch = (resultsOf: ResultsOf) =>
  fc.property(arbInput, (input) =>
    resultsOf(input).every(({ weldId, result }) => {
      const own = input.beads.filter((bead) => bead.weldId === weldId);
      const may = own.length > 0 && own.every((bead) => bead.result === "accepted");
      return result !== "accepted" || (may && allSeen(input, weldId) && allRead(input, weldId));
    }),
  );

const withAllSeen = (input: WeldsInput): WeldsInput => ({
  ...input,
  job: { ...input.job, welds: input.job.welds.map((weld) => ({ ...weld, asked: weld.asked ?? wholeWeld })) },
  draft: {
    ...input.draft,
    welds: [...new Set(input.draft.welds.map(({ weldId }) => weldId))].map((weldId) => ({
      weldId,
      seen: wholeWeld,
      seenNote: "",
    })),
  },
});

/** To learn that all was seen turns no fault into an acceptance, and opens nothing that was accepted. */
const moreSeenHidesNothing = (resultsOf: ResultsOf) =>
  fc.property(arbInput, (input) => {
    const after = new Map(resultsOf(withAllSeen(input)).map(({ weldId, result }) => [weldId, result]));
    return resultsOf(input).every(({ weldId, result }) => result === "open" || after.get(weldId) === result);
  });

/** What was seen and read in full, on a weld whose length contradicts nothing, is accepted: no empty caution. */
const neverTooLittle = (resultsOf: ResultsOf) =>
  fc.property(arbInput, (given) => {
    const input = { ...given, job: { ...given.job, welds: given.job.welds.map(noLength) } };
    return resultsOf(input).every(({ weldId, result }) => {
      const own = input.beads.filter((bead) => bead.weldId === weldId);
      const sound = own.length > 0 && own.every((bead) => bead.result === "accepted");
      return !(sound && allSeen(input, weldId) && allRead(input, weldId)) || result === "accepted";
    });
  });
const noLength = <T>(weld: T): T & { lengthMm: null } => ({ ...weld, lengthMm: null });

describe("the result of a weld", () => {
  it.each([
    ["is never accepted while less was seen than asked, or a gauge was not valid", neverTooMuch],
    ["is not bettered by seeing more where a fault was found", moreSeenHidesNothing],
    ["is accepted where all of it is settled", neverTooLittle],
  ])("%s", (_, law) => {
    fc.assert(law(weldResults), runs);
  });

  const noReadings = (bead: SignedBead): SignedBead => ({
    ...bead,
    judgement: { ...bead.judgement, readings: [] },
  });
  const noMarks = (bead: SignedBead): SignedBead => ({ ...bead, photos: [] });
  /** Takes any number for percent, as if 60 mm were 60 %. */
  const unitBlind = (extent: Extent | null): Extent | null =>
    extent?.kind === "length" ? { kind: "percent", percent: Math.min(100, extent.lengthMm) } : extent;
  const faults: readonly [string, (law: ResultsOf) => fc.IProperty<[WeldsInput]>, ResultsOf][] = [
    ["ignores the extent", neverTooMuch, (input) => weldResults(withAllSeen(input))],
    [
      "takes an extent nobody wrote down for all",
      neverTooMuch,
      (input) => {
        const welds = input.draft.welds.map((one) => ({ ...one, seen: one.seen ?? wholeWeld }));
        return weldResults({ ...input, draft: { ...input.draft, welds } });
      },
    ],
    [
      "does not tell percent from millimetres",
      neverTooMuch,
      (input) => {
        const jobWelds = input.job.welds.map((one) => ({ ...one, asked: unitBlind(one.asked) }));
        const welds = input.draft.welds.map((one) => ({ ...one, seen: unitBlind(one.seen) }));
        return weldResults({
          ...input,
          job: { ...input.job, welds: jobWelds as WeldsInput["job"]["welds"] },
          draft: { ...input.draft, welds },
        });
      },
    ],
    [
      "ignores the gauges of bead readings",
      neverTooMuch,
      (input) => weldResults({ ...input, beads: input.beads.map(noReadings) }),
    ],
    [
      "ignores the gauges of marks",
      neverTooMuch,
      (input) => weldResults({ ...input, beads: input.beads.map(noMarks) }),
    ],
    [
      "forgets that a gauge may be calibrated after the day",
      neverTooMuch,
      (input) =>
        weldResults({
          ...input,
          instruments: input.instruments.map((one) => ({ ...one, calibratedOn: null })),
        }),
    ],
    [
      "counts a due day that passed as still good",
      neverTooMuch,
      (input) =>
        weldResults({
          ...input,
          instruments: input.instruments.map((one) => ({ ...one, dueOn: one.dueOn && "2027-01-01" })),
        }),
    ],
    [
      "lets a weld seen in full pass whatever was found on it",
      moreSeenHidesNothing,
      (input) =>
        weldResults(input).map(({ weldId, result }) => ({
          weldId,
          result: allSeen(input, weldId) ? "accepted" : result,
        })),
    ],
    [
      "never accepts",
      neverTooLittle,
      (input) => weldResults(input).map(({ weldId }) => ({ weldId, result: "open" })),
    ],
  ];
  it.each(faults)("the law catches one that %s", (_, law, faulty) => {
    expect(fc.check(law(faulty), runs).failed).toBe(true);
  });
});

describe("a whole record", () => {
  const twenty = {
    draft: { welds: [{ weldId: "w1", seen: { kind: "percent", percent: 20 }, seenNote: "" }] },
  } as const;

  it("of a sound weld seen in full with a gauge in date is accepted", () => {
    const record = recordOf({ beads: [soundBead()] });
    expect([record.result, record.weldResults[0]?.result, record.points]).toEqual([
      "accepted",
      "accepted",
      [],
    ]);
    expect(openWelds(record)).toEqual([]);
  });

  it("of which 20 % of 100 % was seen is open at that weld, and says what is missing", () => {
    const record = recordOf({ ...twenty, draft: { welds: [...twenty.draft.welds] }, beads: [soundBead()] });
    expect(record.result).toBe("open");
    expect(record.weldResults).toEqual([{ weldId: "w1", result: "open" }]);
    expect(record.points).toEqual([
      {
        code: "extent-short",
        weight: "open",
        weldId: "w1",
        sentence:
          "Weld W1: 100 % was asked and 20 % was seen; 80 %, 240 mm (9.449 in) of the weld is still to be looked at.",
      },
    ]);
    expect(openWelds(record)[0]?.reasons[0]?.closing).toContain("Look at the rest");
  });

  it("read with a gauge that is overdue is open at that weld, with weld, reading, gauge and day", () => {
    const gauge = {
      id: "g",
      ...InstrumentSchema.parse({ kind: "fillet-gauge", name: "FG", serial: "1", dueOn: "2026-11-24" }),
    };
    const record = recordOf({ beads: [soundBead("FG, no. 1")], instruments: [gauge] });
    expect(record.weldResults).toEqual([{ weldId: "w1", result: "open" }]);
    const point = record.points.find(({ code }) => code === "reading-gauge-overdue");
    for (const words of ["Weld W1", "throat", "FG, no. 1", "2026-11-24", "2026-11-25"])
      expect(point?.sentence).toContain(words);
  });

  it("names marks read with a gauge that is not ticked", () => {
    const deep = { quantity: "depth" as const, valueMm: 0.2, instrument: "pit gauge", resolutionMm: 0.05 };
    const record = recordOf({ beads: [beadOf(1, {}, [undercut([deep])])] });
    const point = record.points.find(({ code }) => code === "reading-instrument-not-ticked");
    expect(point?.sentence).toContain('depth of mark 1 read with "pit gauge"');
  });

  const noted = fc.record({
    asked: maybe(arbExtent(1)),
    seen: maybe(arbExtent(0)),
    lengthMm: maybe(fc.constantFrom(100, 300)),
    examinedOn: maybe(arbDay),
    dueOn: maybe(arbDay),
    bead: fc.constantFrom(soundBead(), soundBead("another gauge"), beadOf(1)),
    beads: fc.boolean(),
  });
  it("says of every open weld why, and what would close it; and accepts nothing its welds do not", () => {
    fc.assert(
      fc.property(noted, ({ asked, seen, lengthMm, examinedOn, dueOn, bead, beads }) => {
        const full = recordOf();
        const content = {
          ...full.job.content,
          welds: full.job.content.welds.map((one) => ({ ...one, asked, lengthMm })),
        };
        const gauge = {
          id: "g",
          ...InstrumentSchema.parse({ kind: "calliper", name: "Gauge 2", serial: "F-2", dueOn }),
        };
        const record = makeRecord({
          inspection: full.inspection,
          job: { ...full.job, content: content as WeldsInput["job"] },
          criteria: null,
          draft: { ...full.draft, examinedOn, welds: [{ weldId: "w1", seen, seenNote: "" }] },
          instruments: [gauge],
          marks: {},
          beads: beads ? [assessBead(bead)] : [],
        });
        const open = record.weldResults.filter(({ result }) => result === "open");
        expect(openWelds(record).map(({ weldId }) => weldId)).toEqual(open.map(({ weldId }) => weldId));
        for (const { reasons } of openWelds(record)) {
          expect(reasons.length).toBeGreaterThan(0);
          for (const { sentence, closing } of reasons)
            expect(`${sentence} ${closing}`).not.toContain("undefined");
        }
        if (open.length > 0) expect(record.result).not.toBe("accepted");
      }),
      { numRuns: 120, seed: 20261126 },
    );
  });
});
