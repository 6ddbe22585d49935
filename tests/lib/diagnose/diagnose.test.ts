import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  diagnose,
  DiagnoseInputSchema,
  diagnoseJsonSchema,
  diagnoseVocabulary,
  type Diagnosis,
} from "@/lib/diagnose";
import { exampleSetups, windowFor } from "@/lib/setup";
import { imperfectionIds, places, patterns, processes, stretches } from "@/lib/trade";
import { infer } from "./network/infer";
import { causeModel, signIds } from "@/lib/diagnose/model";
import { inclusionExclusion } from "./network/inclusion-exclusion";

function run(given: unknown): Diagnosis {
  const result = diagnose(DiagnoseInputSchema.parse(given));
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}
const marks = (...ids: string[]) => ids.map((imperfection) => ({ imperfection }));
const ipm = (inches: number) => (inches * 25.4) / 1000;

const finding = fc.record({
  imperfection: fc.constantFrom(...imperfectionIds),
  place: fc.option(fc.constantFrom(...places)),
  stretch: fc.option(fc.constantFrom(...stretches)),
  patterns: fc.uniqueArray(fc.constantFrom(...patterns), { maxLength: 3 }),
});
const input = fc.record({
  setup: fc.record({ process: fc.constantFrom(...processes) }),
  findings: fc.array(finding, { minLength: 1, maxLength: 5 }),
});

describe("laws", () => {
  it("order and repetition of marks change nothing", () => {
    fc.assert(
      fc.property(input, (given) => {
        const again = {
          ...given,
          findings: [...given.findings].reverse().concat(given.findings.slice(0, 1)),
        };
        expect(run(again)).toEqual(run(given));
      }),
      { numRuns: 40 },
    );
  });

  it("probabilities lie in 0..1, causes come sorted, information is never negative, reasons are sourced", () => {
    fc.assert(
      fc.property(input, (given) => {
        const { causes, checks } = run(given);
        expect(causes.every(({ probability: p }) => p >= 0 && p <= 1)).toBe(true);
        expect(causes.map(({ probability }) => probability)).toEqual(
          causes.map(({ probability }) => probability).toSorted((a, b) => b - a),
        );
        for (const check of checks) {
          expect(check.informationBits).toBeGreaterThanOrEqual(0);
          expect(
            Math.abs(check.answers.reduce((sum, { probability }) => sum + probability, 0) - 1),
          ).toBeLessThan(1e-9);
        }
        for (const { why } of causes) {
          for (const item of why)
            expect(item.sentence.length > 5 && item.source.document.length > 0).toBe(true);
        }
      }),
      { numRuns: 60 },
    );
  });

  it("agrees with inclusion-exclusion over the full tables where that does not cancel", () => {
    const { network } = causeModel("FCAW-G");
    const present = ["undercut", "spatter", "convex-bead", "surface-porosity"].map((id) =>
      signIds.indexOf(id as never),
    );
    const evidence = { present, absent: [signIds.indexOf("overlap")], virtual: [] };
    const [a, b] = [infer(network, evidence), inclusionExclusion(network, evidence)];
    a.marginals.forEach((row, v) =>
      row.forEach((p, s) => expect(Math.abs(p - b.marginals[v]![s]!)).toBeLessThan(1e-10)),
    );
  });

  it("twenty findings stay finite and in range", () => {
    const { causes } = run({
      setup: { process: "FCAW-G" },
      findings: marks(...imperfectionIds.slice(0, 20)),
    });
    expect(causes.every(({ probability: p }) => Number.isFinite(p) && p >= 0 && p <= 1)).toBe(true);
  });
});

describe("what the record alone tells", () => {
  it("finds wrong polarity with no mark at all, and says the contradiction", () => {
    const d = run({ setup: { process: "FCAW-S", electrodeClass: "E71T-11", polarity: "DCEP" } });
    expect(d.causes[0]!.id).toBe("polarity");
    expect(d.firstChange).toMatchObject({ causeId: "polarity", fromText: "DCEP", toText: "DCEN" });
    expect(d.contradictions.map(({ code }) => code)).toContain("polarity-against-class");
  });

  it("says gas-shielded wire without gas", () => {
    const d = run({ setup: { process: "FCAW-G", electrodeClass: "E71T-1", gas: "none" } });
    expect(d.contradictions.map(({ code }) => code)).toContain("gas-missing");
    expect(d.causes[0]!.id).toBe("gas-low");
  });

  it("unknown says nothing: an empty record leaves the priors", () => {
    for (const { probability, prior, why } of run({ setup: { process: "GMAW" } }).causes) {
      expect(probability).toBeCloseTo(prior, 12);
      expect(why).toEqual([]);
    }
  });

  it("sends cracks, suspected lack of fusion and arc strikes to an inspector before any change", () => {
    for (const id of ["crater-crack", "longitudinal-crack", "lack-of-fusion", "arc-strike"]) {
      const d = run({ setup: { process: "FCAW-G" }, findings: marks(id) });
      expect(d.firstChange).toBeNull();
      expect(d.cautions[0]!.level).toBe("stop");
    }
  });
});

describe("answers and counts", () => {
  const porous = { setup: { process: "GMAW" }, findings: marks("surface-porosity") };
  const share = (d: Diagnosis, id: string) => d.causes.find((cause) => cause.id === id)!.probability;

  it("an answer moves its cause, leaves the list of checks and changes their order", () => {
    const before = run(porous);
    const after = run({ ...porous, answers: { "gas-flow-read": "low" } });
    expect(share(after, "gas-low")).toBeGreaterThan(5 * share(before, "gas-low"));
    expect(before.checks.map(({ id }) => id)).toContain("gas-flow-read");
    expect(after.checks.map(({ id }) => id)).not.toContain("gas-flow-read");
    const left = new Set(after.checks.map(({ id }) => id));
    const order = (d: Diagnosis) => d.checks.map(({ id }) => id).filter((id) => left.has(id));
    expect(order(after)).not.toEqual(order(before));
  });

  it("shop counts shift the prior, are shown, and empty counts are the published state exactly", () => {
    const counted = run({ ...porous, shopCounts: { "ctwd-long": 7, draft: 2 } });
    expect(share(counted, "ctwd-long")).toBeGreaterThan(share(run(porous), "ctwd-long"));
    expect(counted.causes.find(({ id }) => id === "ctwd-long")!.shop).toEqual({ confirmed: 7, total: 9 });
    expect(run({ ...porous, shopCounts: {} })).toEqual(run(porous));
    expect(run(porous).causes[0]!.shop).toBeNull();
  });

  it("one mistake explains what one mistake can", () => {
    const d = run({
      setup: { process: "FCAW-S", electrodeClass: "E71T-11" },
      findings: [{ imperfection: "surface-porosity", patterns: ["with-soot"] }, { imperfection: "spatter" }],
    });
    expect(d.joint!.causes).toEqual(["polarity"]);
  });

  it("names path and reason for bad input", () => {
    const bad = diagnose({
      ...DiagnoseInputSchema.parse({}),
      answers: { "no-such": "x", "draft-feel": "maybe" },
    });
    expect(bad.ok ? [] : bad.issues.map(({ code, path }) => [code, path.join(".")])).toEqual([
      ["unknown-question", "answers.no-such"],
      ["unknown-answer", "answers.draft-feel"],
    ]);
    expect(Object.keys(diagnoseJsonSchema())).toContain("properties");
    expect(diagnoseVocabulary().imperfections).toHaveLength(imperfectionIds.length);
  });
});

const t11 = {
  process: "FCAW-S",
  electrodeClass: "E71T-11",
  electrodeDiameterMm: 0.9,
  polarity: "DCEN",
  gas: "none",
  travelDirection: "drag",
  travelAngleDeg: 15,
  baseMetal: "carbon-steel",
} as const;
const t1 = {
  process: "FCAW-G",
  electrodeClass: "E71T-1",
  electrodeDiameterMm: 1.2,
  polarity: "DCEP",
  travelDirection: "drag",
  ctwdMm: 20,
  gasFlowLPerMin: 19,
} as const;

/** Invented beads on set-ups of the trade (common practice, no source), each to a change with number and direction. */
describe("from set-up and marks to a change", () => {
  const cases = [
    {
      name: "E71T-11 stringers, high and narrow on a long stick-out",
      setup: {
        ...t11,
        joint: "stringer-pad",
        position: "flat",
        wireFeedMPerMin: ipm(245),
        volts: 16.5,
        ctwdMm: 35,
      },
      seen: ["convex-bead"],
      causeId: "ctwd-long",
      quantity: "tip to work",
      way: -1,
    },
    {
      name: "E71T-11 lap on 2 mm sheet, burned through",
      setup: {
        ...t11,
        joint: "lap",
        position: "horizontal",
        thicknessMm: 2,
        wireFeedMPerMin: ipm(400),
        volts: 19.5,
        ctwdMm: 19,
      },
      seen: ["burn-through"],
      causeId: "wfs-high",
      quantity: "wire feed",
      way: -1,
    },
    {
      name: "E71T-11 T-joint at 230 V, ropey and stubbing",
      setup: {
        ...t11,
        joint: "tee",
        position: "horizontal",
        thicknessMm: 6,
        wireFeedMPerMin: ipm(400),
        volts: 15,
        ctwdMm: 25,
        inputPower: "230V",
      },
      seen: ["convex-bead", "spatter"],
      causeId: "volt-low",
      quantity: "voltage",
      way: 1,
    },
    {
      name: "E71T-1 in 75/25, wide with both toes undercut and spatter",
      setup: {
        ...t1,
        gas: "75Ar-25CO2",
        joint: "tee",
        position: "horizontal",
        wireFeedMPerMin: ipm(250),
        volts: 30,
      },
      seen: ["flat-wide-bead", "undercut", "spatter"],
      causeId: "volt-high",
      quantity: "voltage",
      way: -1,
    },
    {
      name: "E71T-1 in CO2, cold lap",
      setup: {
        ...t1,
        gas: "CO2",
        joint: "tee",
        position: "horizontal",
        wireFeedMPerMin: ipm(300),
        volts: 26,
        travelSpeedMmPerMin: 150,
      },
      seen: ["overlap", "oversized"],
      causeId: "travel-slow",
      quantity: "travel speed",
      way: 1,
    },
    {
      name: "E308LT1 1.2 mm, dull and coloured at low flow",
      setup: {
        process: "FCAW-G",
        electrodeClass: "E308LT1-1",
        electrodeDiameterMm: 1.2,
        polarity: "DCEP",
        gas: "CO2",
        gasFlowLPerMin: 8,
        baseMetal: "stainless",
        joint: "butt-backed",
        position: "flat",
      },
      seen: ["surface-porosity", "temper-colour"],
      causeId: "gas-low",
      quantity: "gas flow",
      way: 1,
    },
    {
      name: "E308LT0-3 0.9 mm T-joint, too little feed",
      setup: {
        process: "FCAW-S",
        electrodeClass: "E308LT0-3",
        electrodeDiameterMm: 0.9,
        polarity: "DCEP",
        gas: "none",
        baseMetal: "stainless",
        joint: "tee",
        position: "horizontal",
        wireFeedMPerMin: ipm(200),
        volts: 25,
        ctwdMm: 16,
      },
      seen: ["overlap", "convex-bead"],
      causeId: "wfs-low",
      quantity: "wire feed",
      way: 1,
    },
  ];
  it.each(cases)("$name", ({ setup, seen, causeId, quantity, way }) => {
    const { firstChange } = run({ setup, findings: marks(...seen) });
    expect(firstChange).toMatchObject({ causeId, quantity });
    expect(Math.sign(firstChange!.toSi! - firstChange!.fromSi!)).toBe(way);
  });

  it("E71T-11 T-joint at 120 V: asked for more than the input holds, the feed is capped at about 280 in/min", () => {
    const setup = {
      ...t11,
      joint: "tee",
      position: "horizontal",
      thicknessMm: 6,
      inputPower: "120V",
      wireFeedMPerMin: ipm(270),
      volts: 17,
      ctwdMm: 25,
    };
    const d = run({ setup, findings: marks("overlap", "convex-bead"), answers: { "cold-arc": "yes" } });
    const more = d.causes.find(({ id }) => id === "wfs-low")!.change;
    expect(more.toSi!).toBeCloseTo(ipm(280), 9);
    const beyond = run({ setup: { ...setup, wireFeedMPerMin: ipm(400) } });
    expect(beyond.contradictions.map(({ code }) => code)).toContain("feed-beyond-input");
    expect(beyond.causes[0]!.id).toBe("input-power");
  });

  it("E308LT0-3 in a lap on the wrong pole, and standing vertical", () => {
    const d = run({
      setup: {
        process: "FCAW-S",
        electrodeClass: "E308LT0-3",
        electrodeDiameterMm: 0.9,
        polarity: "DCEN",
        joint: "lap",
        position: "vertical",
        progression: "up",
      },
      findings: marks("spatter"),
    });
    expect(d.firstChange).toMatchObject({ causeId: "polarity", toText: "DCEP" });
    expect(d.contradictions.map(({ code }) => code)).toContain("position-against-class");
  });

  it("E71T-11 vertical up: undercut where the weave turns asks for a pause, not for a dial", () => {
    const d = run({
      setup: { ...t11, joint: "tee", position: "vertical", progression: "up" },
      findings: [{ imperfection: "undercut", patterns: ["weave-turns"] }],
    });
    expect(d.firstChange).toMatchObject({ causeId: "weave", direction: "do" });
  });

  it("E71T-1 in a groove over backing, many passes: slag at the toe is cleaned away first", () => {
    const d = run({
      setup: { ...t1, gas: "75Ar-25CO2", joint: "groove-backed", position: "flat", passCount: 4 },
      findings: [{ imperfection: "trapped-slag", place: "left-toe" }],
    });
    expect(d.firstChange!.causeId).toBe("slag-left");
  });

  it("every example set-up of the house is diagnosed, and no number leaves the wire's window", () => {
    for (const { setup } of exampleSetups) {
      const window = windowFor(setup);
      const d = run({ setup, findings: marks("convex-bead", "undercut") });
      for (const { change } of d.causes) {
        const band =
          change.quantity === "voltage"
            ? window?.volts
            : change.quantity === "wire feed"
              ? window?.wireFeedMPerMin
              : change.quantity === "tip to work"
                ? window?.ctwdMm
                : null;
        if (!band || change.toSi === null) continue;
        // A bead that already ran outside is brought towards the window, never further out.
        const from = change.fromSi ?? change.toSi;
        expect(change.toSi).toBeGreaterThanOrEqual(Math.min(band.low, from) - 1e-9);
        expect(change.toSi).toBeLessThanOrEqual(Math.max(band.high, from) + 1e-9);
      }
    }
  });
});
