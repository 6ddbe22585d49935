import { describe, expect, it } from "vitest";
import { diagnose, DiagnoseInputSchema, type Change, type Diagnosis } from "@/lib/diagnose";
import { causeModel, linksFor, placeOf } from "@/lib/diagnose/model";
import { causes } from "@/lib/diagnose/tables/causes";
import { pullApart } from "@/lib/diagnose/tables/knobs";
import { questions } from "@/lib/diagnose/tables/questions";
import { symptoms } from "@/lib/diagnose/tables/symptoms";
import { checkSetup, emptyRunSetup, type RunSetup } from "@/lib/setup";
import { imperfectionIds, imperfections, processes, type ImperfectionId } from "@/lib/trade";
import { inDepth } from "../../setup/in-depth";

/**
 * What the advice once said wrongly, each with the bead it said it of. What is right is common practice, no source, where
 * nothing else is named; the settings are bench points of the trade.
 */
const ipm = (inches: number) => (inches * 25.4) / 1000;
const t11: Partial<RunSetup> = {
  process: "FCAW-S",
  electrodeClass: "E71T-11",
  electrodeDiameterMm: 0.9,
  polarity: "DCEN",
  gas: "none",
  baseMetal: "carbon-steel",
  ctwdMm: 19,
};
const shortArc: Partial<RunSetup> = {
  process: "GMAW",
  transfer: "short-circuit",
  electrodeClass: "ER70S-6",
  electrodeDiameterMm: 0.9,
  polarity: "DCEP",
  gas: "75Ar-25CO2",
  gasFlowLPerMin: 14,
  ctwdMm: 12,
};

interface Given {
  readonly setup?: Partial<RunSetup>;
  readonly findings?: readonly {
    readonly imperfection: ImperfectionId;
    readonly place?: string;
    readonly stretch?: string;
  }[];
  readonly answers?: Readonly<Record<string, string>>;
  readonly bead?: {
    readonly widthMm?: number | null;
    readonly legMm?: number | null;
    readonly lengthMm?: number | null;
  };
}

function run(given: Given): Diagnosis {
  const result = diagnose(DiagnoseInputSchema.parse(given));
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}
const proposed = ({ firstChange, nextChanges }: Diagnosis): readonly Change[] =>
  firstChange === null ? nextChanges : [firstChange, ...nextChanges];
const causesOf = (found: Diagnosis) => proposed(found).map(({ causeId }) => causeId);
const marks = (...ids: readonly ImperfectionId[]) => ids.map((imperfection) => ({ imperfection }));

describe("out of position", () => {
  it("a hanging, sagging bead is not made hotter", () => {
    const overhead = run({
      setup: {
        ...t11,
        position: "overhead",
        joint: "tee",
        wireFeedMPerMin: ipm(330),
        volts: 18.5,
        thicknessMm: 6,
      },
      findings: marks("convex-bead", "overlap"),
    });
    expect(overhead.firstChange?.causeId).toBe("wfs-high");
    expect(causesOf(overhead)).not.toEqual(expect.arrayContaining(["wfs-low"]));
    expect(causesOf(overhead)).not.toEqual(expect.arrayContaining(["volt-low"]));
    const feed = overhead.firstChange!;
    expect(feed.toSi! / feed.fromSi!).toBeLessThan(0.85);
    expect(feed.sentence).toMatch(/feed and volts down together/);
  });

  it("a bulging, undercut bead run uphill at flat settings is not travelled slower", () => {
    const up = run({
      setup: {
        ...t11,
        position: "vertical",
        progression: "up",
        joint: "tee",
        wireFeedMPerMin: ipm(245),
        volts: 16.5,
        thicknessMm: 6,
      },
      findings: [{ imperfection: "convex-bead" }, { imperfection: "undercut", place: "both-toes" }],
    });
    expect(["wfs-high", "weave"]).toContain(up.firstChange?.causeId);
    expect(causesOf(up)).not.toContain("travel-fast");
  });

  it("thin sheet downhill with a wire made for it: travel faster, not uphill", () => {
    const down = run({
      setup: {
        ...t11,
        position: "vertical",
        progression: "down",
        joint: "lap",
        thicknessMm: 2,
        wireFeedMPerMin: ipm(110),
        volts: 15.5,
      },
      findings: [{ imperfection: "trapped-slag", place: "face" }],
      answers: { "pool-ran-ahead": "yes" },
    });
    expect(down.firstChange?.causeId).toBe("travel-slow");
    expect(causesOf(down)).not.toContain("downhill");
  });
});

describe("a change that nothing speaks for", () => {
  it("one mark and nothing else gets two questions, unless the mark has one cause by its nature", () => {
    for (const process of processes) {
      for (const id of imperfectionIds.filter((one) => linksFor(one, process).length > 0)) {
        const found = run({ setup: { process }, findings: marks(id) });
        if (found.firstChange !== null) {
          const first = found.causes.find((cause) => cause.id === found.firstChange!.causeId)!;
          expect(first.probability, `${process} ${id}`).toBeGreaterThanOrEqual(0.5);
        } else if (!imperfections[id].inspectorFirst)
          expect(found.settling.length, `${process} ${id}`).toBe(2);
      }
    }
  });

  it("no two changes of one answer undo each other: zinc and spatter", () => {
    const zinc = run({ setup: { process: "FCAW-S", surface: "galvanised" }, findings: marks("spatter") });
    const ids = causesOf(zinc);
    expect(ids.some((a, i) => ids.slice(i + 1).some((b) => pullApart(a, b)))).toBe(false);
  });
});

describe("what is known comes first", () => {
  const recorded: readonly (readonly [string, Partial<RunSetup>, string, string | null])[] = [
    ["mixed gas on a tungsten torch", { process: "GTAW", gas: "75Ar-25CO2" }, "gas-wrong", "Ar"],
    ["a tungsten torch on electrode positive", { process: "GTAW", polarity: "DCEP" }, "polarity", "DCEN"],
    [
      "the wrong gas for the class",
      { process: "FCAW-G", electrodeClass: "E71T-1C", gas: "75Ar-25CO2" },
      "gas-wrong",
      "CO2",
    ],
    [
      "solid stainless wire in CO2, class not recorded",
      { process: "GMAW", baseMetal: "stainless", gas: "CO2" },
      "gas-wrong",
      null,
    ],
    [
      "solid stainless wire in 75/25, class not recorded",
      { process: "GMAW", baseMetal: "stainless", gas: "75Ar-25CO2" },
      "gas-wrong",
      null,
    ],
  ];
  it.each(recorded)("%s", (_, setup, causeId, toText) => {
    for (const findings of [[], marks("surface-porosity"), marks("surface-porosity", "flat-wide-bead")]) {
      const { firstChange } = run({ setup, findings });
      expect(firstChange?.causeId).toBe(causeId);
      if (toText !== null) expect(firstChange?.toText).toBe(toText);
      expect(firstChange?.toText?.split(" or ")).not.toContain(setup.gas ?? setup.polarity);
    }
  });

  /** Every answer that is a finding of its fault, in every process in which the fault can be. */
  const confirming = processes.flatMap((process) =>
    questions.flatMap((question) =>
      question.causes.flatMap((cause, i) =>
        placeOf(causeModel(process), cause) === null
          ? []
          : question.answers
              .filter(({ likelihood }) => likelihood[i + 1]! >= 4 * likelihood[0]!)
              .filter(({ likelihood }) => likelihood.slice(1).every((l) => l <= likelihood[i + 1]!))
              .map((answer) => ({ process, question: question.id, answer: answer.id, cause })),
      ),
    ),
  );
  it(`an answer that finds a fault makes its cure the first change: ${confirming.length} answers, three beads each`, () => {
    expect(confirming.length).toBeGreaterThan(150);
    for (const { process, question, answer, cause } of confirming.filter((_, i) => i % inDepth(3, 1) === 0)) {
      for (const findings of [
        marks("surface-porosity"),
        marks("convex-bead", "spatter"),
        marks("undercut"),
      ]) {
        const found = run({ setup: { process }, findings, answers: { [question]: answer } });
        const [asked] = causesOf(found);
        const known = causes.find(({ id }) => id === cause)!;
        // A step that nothing is left of is no change; everything else is.
        expect([process, question, answer, asked]).toEqual([process, question, answer, known.id]);
      }
    }
  });

  it("what was answered as done is never proposed", () => {
    for (const process of processes) {
      for (const question of questions) {
        for (const answer of question.answers) {
          const cleared = question.causes.filter(
            (_, i) => answer.likelihood[i + 1]! <= answer.likelihood[0]! / 4,
          );
          const found = run({
            setup: { process },
            findings: marks("crater-crack", "open-crater", "surface-porosity"),
            answers: { [question.id]: answer.id },
          });
          for (const cause of cleared)
            expect(causesOf(found), `${process} ${question.id} ${answer.id}`).not.toContain(cause);
        }
      }
    }
  });

  it("a stainless root whose back was not purged is purged", () => {
    const root = run({
      setup: { process: "GTAW", baseMetal: "stainless", joint: "butt-open", gas: "Ar", polarity: "DCEN" },
      findings: [{ imperfection: "temper-colour", place: "root" }],
      answers: { "back-purge": "fault" },
    });
    expect(root.firstChange?.causeId).toBe("no-purge");
    expect(root.cautions.map(({ code }) => code)).toContain("asphyxiation");
  });
});

describe("the volts that go with a feed", () => {
  const complains = (setup: Partial<RunSetup>) =>
    checkSetup({ ...emptyRunSetup, ...setup })
      .filter(({ data }) => data["field"] === "volts")
      .map(({ code }) => code);

  /** Trade reference notes on self-shielded set-up: 50 to 110 in/min, 14 to 16.5 V for .035 in E71T-11. */
  it("the ends of a published row are inside it, whatever the position", () => {
    expect(complains({ ...t11, wireFeedMPerMin: ipm(50), volts: 14 })).toEqual([]);
    expect(complains({ ...t11, wireFeedMPerMin: ipm(110), volts: 16.5 })).toEqual([]);
    const low = run({
      setup: { ...t11, wireFeedMPerMin: ipm(50), volts: 14 },
      findings: marks("flat-wide-bead", "spatter"),
    });
    for (const change of proposed(low).filter(({ unitKind }) => unitKind === "voltage"))
      expect(change.toSi!).toBeGreaterThanOrEqual(13);
  });

  it("a pair out of step is the fault, though each lies inside its own window", () => {
    const ropey = run({
      setup: {
        ...t11,
        joint: "tee",
        position: "horizontal",
        thicknessMm: 6,
        wireFeedMPerMin: ipm(245),
        volts: 14,
      },
      findings: marks("convex-bead"),
    });
    expect(ropey.firstChange).toMatchObject({ causeId: "volt-low", unitKind: "voltage" });
    const hollow = run({
      setup: {
        ...t11,
        joint: "tee",
        position: "horizontal",
        thicknessMm: 6,
        wireFeedMPerMin: ipm(245),
        volts: 19,
      },
      findings: marks("concave-face"),
    });
    expect(hollow.firstChange).toMatchObject({ causeId: "volt-high", unitKind: "voltage" });
  });
});

describe("steps know the plate, the joint and the size", () => {
  const first = (given: Given) => run(given).firstChange!;

  it("no dial is turned by more than a fifth from inside its window", () => {
    const hole = first({
      setup: {
        ...shortArc,
        joint: "lap",
        position: "horizontal",
        thicknessMm: 0.8,
        wireFeedMPerMin: ipm(150),
        volts: 16,
      },
      findings: marks("burn-through"),
    });
    expect(["wfs-high", "thin-base", "travel-slow"]).toContain(hole.causeId);
    const less = run({
      setup: { ...shortArc, joint: "lap", thicknessMm: 0.8, wireFeedMPerMin: ipm(150), volts: 16 },
      findings: marks("burn-through"),
    }).causes.find(({ id }) => id === "wfs-high")!.change;
    // The rule of thumb wants about 31 A there: the whole fifth is used, and more is said to be left.
    expect(less.toSi! / less.fromSi!).toBeCloseTo(0.8, 6);
    expect(less.reason.sentence).toMatch(/rest after the next bead/);
  });

  /** Multi-process machine manual: about 3/16 in in one pass with .035 in wire. */
  it.each([
    [4.5, 1],
    [6, 1],
    [12, 7],
    [100, 441],
  ])("a leg of %d mm with 0.9 mm wire is laid in %d passes", (targetLegMm, passes) => {
    const { change } = run({
      setup: {
        ...t11,
        joint: "tee",
        position: "flat",
        thicknessMm: 12,
        wireFeedMPerMin: ipm(245),
        volts: 16.5,
        targetLegMm,
      },
      findings: marks("undersized"),
      bead: { legMm: 4.2 },
    }).causes.find(({ id }) => id === "travel-fast")!;
    expect(change.reason.amounts.find(({ quantity }) => quantity === "passes")?.valueSi ?? 1).toBe(passes);
    if (change.toSi !== null) expect(change.toSi).toBeGreaterThan(100);
  });

  it("a feed a little below the window and one a little above its end are told nearly the same", () => {
    const root = (feed: number) =>
      run({
        setup: {
          process: "FCAW-G",
          electrodeClass: "E71T-1M",
          electrodeDiameterMm: 1.2,
          polarity: "DCEP",
          gas: "75Ar-25CO2",
          joint: "groove-open",
          position: "flat",
          thicknessMm: 10,
          ctwdMm: 20,
          volts: 22,
          wireFeedMPerMin: ipm(feed),
        },
        findings: [{ imperfection: "incomplete-penetration", place: "root" }],
      }).causes.find(({ id }) => id === "wfs-low")!.change.toSi!;
    const feeds = Array.from({ length: 40 }, (_, i) => 150 + i);
    const worst = Math.max(
      ...feeds.slice(1).map((feed) => Math.abs(root(feed) - root(feed - 1)) / ipm(feed)),
    );
    expect(worst).toBeLessThan(0.06);
  });

  /** Usual amperage tables for covered electrodes, from memory: 3/32 in E6013 takes about 40 to 90 A. */
  it("a small rod far over its amps comes back into its own window", () => {
    const rod = run({
      setup: { process: "SMAW", electrodeClass: "E6013", electrodeDiameterMm: 2.4, amps: 160 },
      findings: marks("undercut", "spatter"),
    });
    const change = rod.causes.find(({ id }) => id === "wfs-high")!.change;
    expect(change.toSi!).toBeLessThanOrEqual(95);
  });

  /** AWS D1.1, prequalified grooves with backing: 1/4 in root opening (clause from memory). */
  it("a backed groove opened to 6.4 mm is not closed", () => {
    const backed = run({
      setup: { process: "FCAW-G", joint: "groove-backed", fitUpGapMm: 6.4, thicknessMm: 15 },
      findings: marks("underfill", "excess-penetration"),
    });
    expect(causesOf(backed)).not.toContain("gap");
    expect(checkSetup({ ...emptyRunSetup, joint: "groove-backed", fitUpGapMm: 6.4 })).toEqual([]);
  });

  it("a pass that is already too big is never made bigger", () => {
    const big = run({
      setup: {
        process: "FCAW-G",
        electrodeClass: "E71T-1M",
        electrodeDiameterMm: 1.1,
        joint: "tee",
        position: "flat",
        passCount: 1,
      },
      findings: [{ imperfection: "undercut", place: "both-toes" }],
      bead: { legMm: 9.5 },
    });
    expect(causesOf(big)).not.toContain("travel-fast");
  });
});

describe("pads, thick plate, dirt", () => {
  it("slag in the valleys of a pad is chipped, or the next bead laid to the toe", () => {
    const pad = (answers: Record<string, string>) =>
      run({
        setup: {
          ...t11,
          joint: "stringer-pad",
          position: "flat",
          passCount: 1,
          thicknessMm: 6,
          wireFeedMPerMin: ipm(245),
          volts: 16.5,
        },
        findings: [{ imperfection: "trapped-slag", place: "left-toe", stretch: "whole-length" }],
        answers,
      });
    expect(["slag-left", "placement", "bead-shape"]).toContain(pad({}).firstChange?.causeId);
    expect(pad({ "slag-cleaned": "fault" }).firstChange).toMatchObject({ causeId: "slag-left" });
    expect(pad({ "slag-cleaned": "fault" }).firstChange?.sentence).toMatch(/third to a half/);
  });

  it("a short arc that lies cold on thick plate: another transfer, not a slower hand", () => {
    const setup = {
      ...shortArc,
      joint: "tee",
      position: "horizontal",
      thicknessMm: 20,
      wireFeedMPerMin: ipm(230),
      volts: 18,
    } as const;
    const cold = run({ setup, findings: [{ imperfection: "overlap", place: "both-toes" }] });
    expect(cold.firstChange).toMatchObject({ causeId: "base-cold-thick" });
    expect(cold.firstChange?.sentence).toMatch(/spray or flux-cored/);
    expect(checkSetup({ ...emptyRunSetup, ...setup }).map(({ code }) => code)).toContain(
      "transfer-beyond-plate",
    );
  });

  it("self-shielded wire on a plate found dirty: cleaned first", () => {
    const dirty = run({
      setup: t11,
      findings: marks("surface-porosity"),
      answers: { "plate-clean": "fault" },
    });
    expect(dirty.causes[0]?.id).toBe("contam");
    expect(dirty.firstChange?.causeId).toBe("contam");
    expect(dirty.cautions.map(({ code }) => code)).toContain("solvent");
  });
});

describe("what is said", () => {
  it("nothing that is not listed is denied", () => {
    for (const process of processes) {
      for (const id of imperfectionIds.filter((one) => linksFor(one, process).length > 0).slice(0, 12)) {
        for (const cause of run({ setup: { process }, findings: marks(id, "spatter") }).causes.slice(0, 8))
          for (const { sentence } of cause.why) expect(sentence).not.toMatch(/does not make/);
      }
    }
  });

  it("no step of a look at the bench asks for a live wire, a wet finger or an open machine under power", () => {
    const said = [
      ...questions.map(({ question, how }) => `${question} ${how}`),
      ...symptoms.map(({ how }) => how),
      ...causes.map(({ correction }) => correction),
    ].join("\n");
    expect(said).not.toMatch(/wet finger|trigger held|hold the trigger|volts while welding/i);
    for (const line of said
      .split("\n")
      .filter((one) => /\blugs?\b|swap the leads|tip out|change the tip/i.test(one)))
      expect(line).toMatch(/power off|switch off/i);
    for (const line of said.split("\n").filter((one) => /\bdegrease/i.test(one)))
      expect(line).toMatch(/never/i);
    for (const line of said.split("\n").filter((one) => /\bpreheat/i.test(one)))
      expect(line).toMatch(/procedure/i);
  });

  it("every bead brings the caution against electric shock; the change brings its own", () => {
    const codes = (given: Given) => run(given).cautions.map(({ code }) => code);
    expect(codes({})).toContain("shock");
    expect(codes({ setup: { surface: "wet" } })).toContain("wet");
    expect(
      codes({ setup: t11, findings: marks("surface-porosity"), answers: { "plate-coating": "fault" } }),
    ).toContain("zinc");
    expect(codes({ setup: { electrodeClass: "E308LT0-3" } })).toContain("chromium");
    expect(codes({ findings: marks("undercut") })).not.toContain("zinc");
  });
});
