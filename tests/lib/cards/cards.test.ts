import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  CardSchema,
  essentials,
  hasRows,
  heatOfCard,
  notSaid,
  offCard,
  otherThanCard,
  proposeRanges,
} from "@/lib/cards";
import { cardFields } from "@/lib/cards/card";
import { askOfSetup, insideOf, planRun, PlanAskSchema } from "@/lib/plan";
import { emptyRunSetup, exampleSetups, type RunSetup } from "@/lib/setup";
import { base } from "../trials/simulated";

const planned: readonly RunSetup[] = exampleSetups.flatMap(({ setup }) => {
  const plan = planRun(PlanAskSchema.parse(askOfSetup(setup)));
  return plan.ok ? [plan.value.setup] : [];
});

describe("the ranges a card begins with", () => {
  it("hold what was run, and each end by itself stays inside the wire's rows", () => {
    expect(planned.length).toBeGreaterThan(5);
    for (const setup of planned) {
      expect(hasRows(setup)).toBe(true);
      const inside = insideOf(setup)!;
      for (const { field, low, high } of proposeRanges(setup)) {
        expect(low, field).toBeLessThanOrEqual(setup[field]!);
        expect(high, field).toBeGreaterThanOrEqual(setup[field]!);
        if (field === "workAngleDeg" || field === "gasFlowLPerMin" || field === "amps") continue;
        expect(inside({ ...setup, [field]: low }), `${field} ${low}`).toBe(true);
        expect(inside({ ...setup, [field]: high }), `${field} ${high}`).toBe(true);
      }
    }
  });

  it("would leave the rows somewhere, were they not held by them: the fault that the law is for", () => {
    const free = planned.flatMap((setup) => {
      const inside = insideOf(setup)!;
      return (["volts", "wireFeedMPerMin", "ctwdMm"] as const).filter(
        (field) => !inside({ ...setup, [field]: setup[field]! * 1.15 }),
      );
    });
    expect(free.length).toBeGreaterThan(0);
  });

  it("are a trial's own where it showed some, and none for what was not written down", () => {
    const ranges = proposeRanges(base, [{ field: "volts", low: base.volts! - 0.1, high: base.volts! + 0.1 }]);
    expect(ranges.find(({ field }) => field === "volts")).toMatchObject({
      low: expect.closeTo(base.volts! - 0.1, 9) as number,
      high: expect.closeTo(base.volts! + 0.1, 9) as number,
    });
    expect(proposeRanges({ ...base, volts: null }).some(({ field }) => field === "volts")).toBe(false);
  });

  it("are only what was run where no row vouches", () => {
    expect(hasRows({ ...emptyRunSetup, volts: 27 })).toBe(false);
    expect(proposeRanges({ ...emptyRunSetup, volts: 25 })).toEqual([{ field: "volts", low: 24, high: 26 }]);
  });
});

describe("the watch over beads that are run by a card", () => {
  const card = CardSchema.parse({
    title: "Tee",
    setup: base,
    code: "aws-d1-1",
    ranges: [{ field: "volts", low: 23, high: 26 }],
  });

  it("names what lies outside, and not what is unknown", () => {
    expect(offCard(card, { ...base, volts: 27.5 })).toEqual([
      { field: "volts", low: 23, high: 26, value: 27.5 },
    ]);
    expect(offCard(card, { ...base, volts: 22 })).toHaveLength(1);
    expect(offCard(card, { ...base, volts: null })).toEqual([]);
    expect(notSaid(card, { ...base, volts: null })).toEqual(["volts"]);
  });

  it("is silent between the ends and at them, and speaks beyond, whatever the card", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...cardFields),
        fc.double({ min: 1, max: 100, noNaN: true }),
        fc.double({ min: 0, max: 50, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (field, low, width, share) => {
          const range = { field, low, high: low + width };
          const at = (value: number) =>
            offCard({ ranges: [range] }, { ...emptyRunSetup, [field]: value }).length;
          expect(at(low + share * width)).toBe(0);
          expect(at(low * 0.95 - 0.02 * (low + width))).toBe(1);
          expect(at((low + width) * 1.03)).toBe(1);
        },
      ),
      { seed: 5, numRuns: 100 },
    );
  });

  it("says where another wire, gas or position was run", () => {
    expect(otherThanCard(card, { ...base, position: "flat", gas: null })).toEqual(["position"]);
    expect(otherThanCard(card, base)).toEqual([]);
  });
});

describe("the heat of a card", () => {
  it("is k U I / v (arc energy of ISO/TR 18491; k 0.8 for cored wire by EN 1011-1): 17 V, 140 A, 4 mm/s", () => {
    const setup: RunSetup = { ...base, volts: 17, amps: 140, travelSpeedMmPerMin: 240 };
    const heat = heatOfCard({ setup, ranges: [] })!;
    expect(heat.value).toBeCloseTo(0.476, 9);
    expect(heat.amps).toBe("read");
    const wide = heatOfCard({
      setup,
      ranges: [
        { field: "volts", low: 16, high: 18 },
        { field: "amps", low: 130, high: 150 },
        { field: "travelSpeedMmPerMin", low: 200, high: 300 },
      ],
    })!;
    expect(wide.low).toBeCloseTo((0.8 * 16 * 130) / 1000 / 5, 9);
    expect(wide.high).toBeCloseTo((0.8 * 18 * 150 * 60) / 1000 / 200, 9);
  });

  it("goes by burn-off where no amps were read: more stick-out is less heat", () => {
    const heat = heatOfCard({
      setup: base,
      ranges: [{ field: "ctwdMm", low: base.ctwdMm!, high: base.ctwdMm! + 4 }],
    })!;
    expect(heat.amps).toBe("burn-off");
    expect(heat.low).toBeLessThan(heat.value);
    expect(heat.high).toBeCloseTo(heat.value, 9);
    expect(heatOfCard({ setup: { ...base, volts: null }, ranges: [] })).toBeNull();
  });
});

describe("what a code asks", () => {
  it("is a list of what to look up: nothing of it was read, so no row holds a limit", () => {
    for (const rows of Object.values(essentials)) {
      expect(rows.length).toBeGreaterThan(8);
      expect(new Set(rows.map(({ name }) => name)).size).toBe(rows.length);
      for (const { name, source } of rows) {
        expect(source.confidence).toBe("memory");
        expect(name).not.toMatch(/\d/);
        expect(source.clause).not.toBe("");
      }
    }
  });
});
