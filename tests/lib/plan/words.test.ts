import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { answersOf } from "@/lib/setup";
import { inch, metric } from "@/lib/units";
import {
  emptyPlanAsk,
  limitSentence,
  planAnswer,
  planIssueSentence,
  planQuery,
  planRun,
  PlanAskSchema,
  planVocabulary,
  readPlanQuery,
  type PlanAsk,
} from "@/lib/plan";
import { dialled } from "@/lib/plan/dial";
import { givenText } from "@/lib/plan/given-text";
import { givenUnits, type Given, type GivenCode } from "@/lib/plan/gives";
import { planCodes, planIssue } from "@/lib/plan/issues";
import { limitCodes } from "@/lib/plan/plan-run";
import { bottomCodes, topCodes } from "@/lib/plan/bounds";
import { ownEstimate } from "@/lib/trade";
import { grid } from "./grid";

const whole = (sentence: string) => {
  expect(sentence.length).toBeGreaterThan(10);
  expect(sentence).not.toMatch(/undefined|NaN|null|\[object/);
};

describe("words", () => {
  it.each(planCodes)("there is a sentence for %s", (code) => {
    const data = {
      value: 6,
      inputPower: "120V",
      electrode: "E71T-GS",
      onePassMm: 4.8,
      passes: 2,
      process: "SMAW",
    };
    for (const units of [metric, inch]) whole(planIssueSentence(planIssue(code, "thicknessMm", data), units));
  });

  it.each(limitCodes)("there is a sentence for %s", (code) => {
    for (const by of [...topCodes, ...bottomCodes]) {
      const data = {
        by,
        wantedAmps: 200,
        feedMPerMin: 7,
        passes: 2,
        onePassMm: 4.8,
        slowMmPerMin: 120,
        fastMmPerMin: 600,
        travelMmPerMin: 120,
        low: 200,
        high: 500,
        electrode: "E71T-11",
        kW: 6.8,
        knownKw: 5.3,
      };
      for (const units of [metric, inch]) whole(limitSentence({ code, data, source: ownEstimate }, units));
    }
  });

  it.each(Object.keys(givenUnits) as GivenCode[])("%s is written in either unit", (code) => {
    const one: Given = { code, value: 5, low: 4, high: 6, unit: givenUnits[code], source: ownEstimate };
    for (const units of [metric, inch]) whole(Object.values(givenText(one, units)).join(" ; "));
  });

  it("say the whole answer of asks all over the grid", () => {
    for (const ask of grid(350_003)) {
      const answer = planAnswer(ask);
      expect(answer.plan === null).toBe(answer.refusals.length > 0);
      for (const { sentence } of [...answer.refusals, ...answer.ways, ...(answer.plan?.limits ?? [])])
        whole(sentence);
    }
  });

  it("hold every word of the vocabulary once", () => {
    const words = planVocabulary();
    expect(words.fields).toEqual(Object.keys(emptyPlanAsk));
    for (const list of [words.limits, words.refusals, words.knobReasons])
      expect(new Set(list).size).toBe(list.length);
  });
});

describe("an ask in an address", () => {
  it("comes back as it was", () => {
    let met = 0;
    for (const ask of grid(90_001)) {
      const metricAsk = { ...ask, dials: "metric" as const, padWidthMm: 60.5, grooveAngleDeg: 45 };
      expect(readPlanQuery(new URLSearchParams(planQuery(metricAsk)))).toEqual(metricAsk);
      met += 1;
    }
    expect(met).toBeGreaterThan(40);
  });

  it("never throws, and leaves open what cannot be read", () => {
    fc.assert(
      fc.property(
        fc.dictionary(fc.constantFrom(...Object.keys(emptyPlanAsk), "x"), fc.string({ maxLength: 12 })),
        (parts) => {
          const ask = readPlanQuery(new URLSearchParams(parts));
          expect(PlanAskSchema.safeParse(ask).success).toBe(true);
        },
      ),
      { seed: 7 },
    );
    expect(readPlanQuery(new URLSearchParams("thicknessMm=6&position=2F"))).toEqual({
      ...emptyPlanAsk,
      thicknessMm: 6,
    });
  });
});

describe("a dial", () => {
  it("never leaves its ends and never turns back", () => {
    fc.assert(
      fc.property(
        fc.constantFrom<PlanAsk["dials"]>("metric", "inch"),
        fc.double({ min: 1, max: 20, noNaN: true }),
        fc.double({ min: 1, max: 20, noNaN: true }),
        fc.double({ min: 1, max: 20, noNaN: true }),
        fc.double({ min: 1, max: 20, noNaN: true }),
        (dials, a, b, x, y) => {
          const [low, high] = [Math.min(a, b), Math.max(a, b)];
          const at = (value: number) => dialled({ dials }, "wireFeedMPerMin", value, low, high);
          expect(at(x)).toBeGreaterThanOrEqual(low);
          expect(at(x)).toBeLessThanOrEqual(high);
          expect(at(Math.min(x, y))).toBeLessThanOrEqual(at(Math.max(x, y)));
        },
      ),
      { seed: 11 },
    );
  });

  it("reads like a dial: 7.1 m/min, 280 in/min", () => {
    expect(dialled({ dials: "metric" }, "wireFeedMPerMin", 7.13)).toBe(7.1);
    expect(dialled({ dials: "inch" }, "wireFeedMPerMin", 7.13) / 0.0254).toBeCloseTo(280, 9);
  });
});

it("asks whether a name means wire or rod, and says when a 230 V machine has to be asked", () => {
  const ask = PlanAskSchema.parse({
    electrodeClass: "ER70S-6",
    electrodeDiameterMm: 0.9,
    joint: "lap",
    position: "flat",
    thicknessMm: 2,
  });
  const asked = planRun(ask);
  expect(asked.ok ? [] : asked.issues).toMatchObject([{ code: "field-needed", path: ["process"] }]);
  const large: Partial<PlanAsk> = { electrodeClass: "E71T-1C", electrodeDiameterMm: 1.2, thicknessMm: 8 };
  const limitsOn = (inputPower: PlanAsk["inputPower"]) => {
    const planned = planRun({ ...ask, ...large, inputPower });
    return planned.ok ? planned.value.limits.map(({ code }) => code) : ["none"];
  };
  expect(limitsOn("230V")).toContain("ask-the-machine");
  expect(limitsOn("400V-3ph")).not.toContain("ask-the-machine");
});

it("asks for what is needed, and only for that", () => {
  const asked = planRun(emptyPlanAsk);
  expect(asked.ok ? [] : asked.issues.map(({ path }) => path[0])).toEqual([
    "electrodeClass",
    "electrodeDiameterMm",
    "joint",
    "position",
    "thicknessMm",
  ]);
  expect(answersOf("inputPower").length).toBe(3);
});
