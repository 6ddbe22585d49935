import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  electrodeClass,
  electrodeClasses,
  electrodePositions,
  gases,
  linesAtFeed,
  parameterWindow,
  voltsAtFeed,
  windowLines,
  type WindowQuery,
} from "@/lib/trade";
import { transfers } from "@/lib/trade/names";
import { type ElectrodePosition } from "@/lib/trade/electrode-class";
import { lineAtFeed } from "@/lib/trade/window-lines";
import { inDepth } from "../../setup/in-depth";

const ipm = (inches: number) => inches * 0.0254;
function query(name: string, diameterMm: number, more: Partial<WindowQuery> = {}): WindowQuery {
  const electrode = electrodeClass(name, more.transfer ? "GMAW" : null);
  if (electrode === null) throw new Error(name);
  return { electrode, diameterMm, gas: null, transfer: null, positions: electrodePositions, ...more };
}
const allows = (q: WindowQuery, inches: number, volts: number) => {
  const at = voltsAtFeed(q, ipm(inches));
  return at !== null && volts >= at.low && volts <= at.high;
};

describe("each document's row keeps its own line", () => {
  /** Source: trade reference notes, E71T-11 .035 in: 50 to 110 in/min, 14 to 16.5 V, 30 to 120 A. */
  test("50 in/min goes with 14 V and 30 A, 110 in/min with 16.5 V and 120 A, whatever other rows say", () => {
    for (const positions of [electrodePositions, ["flat"]] as const) {
      const q = query("E71T-11", 0.9, { positions });
      const own = (inches: number) =>
        linesAtFeed(q, ipm(inches)).find(({ line }) => line.source.note === "typical range of the notes")!;
      expect(own(50)).toMatchObject({ volts: 14, amps: 30 });
      expect(own(110).volts).toBeCloseTo(16.5, 9);
      expect(own(110).amps).toBeCloseTo(120, 9);
      expect(allows(q, 50, 14)).toBe(true);
      expect(allows(q, 110, 16.5)).toBe(true);
    }
  });

  /** Common practice, no source: 245 in/min at 16.5 V, 400 in/min at 19 to 20 V. */
  test("the bench points suit their feed; their volts do not suit each other's", () => {
    const q = query("E71T-11", 0.9, { positions: ["flat"] });
    expect(allows(q, 245, 16.5)).toBe(true);
    expect(allows(q, 400, 19.5)).toBe(true);
    expect(allows(q, 245, 19)).toBe(false);
    expect(allows(q, 245, 14)).toBe(false);
    expect(allows(q, 400, 16.5)).toBe(false);
  });

  /** Trade reference notes allow 16.5 V at 110 in/min and the bench 16.5 V at 245: between them it is not too much. */
  test("volts that are right at a lower and at a higher feed are right between", () => {
    const q = query("E71T-11", 0.9, { positions: ["flat"] });
    for (const inches of [110, 150, 180, 220, 245]) expect(allows(q, inches, 16.5), `${inches}`).toBe(true);
    expect(allows(q, 150, 17.5)).toBe(false);
  });

  /** From memory: usual data-sheet values of E71T-1 .045 in, 400 in/min at 27.5 V and 500 in/min at 29.5 V in CO2. */
  test("E71T-1 1.2 mm in CO2: what sheets usually give is allowed", () => {
    const q = query("E71T-1C", 1.2, { gas: "CO2", positions: ["flat"] });
    expect(allows(q, 400, 27.5)).toBe(true);
    expect(allows(q, 500, 29.5)).toBe(true);
    expect(allows(q, 200, 29.5)).toBe(false);
    expect(allows(q, 500, 24)).toBe(false);
  });

  test("a document whose amps and feeds do not go together gives a span of amps and none on its lines", () => {
    const q = query("E71T-8", 1.7, { positions: ["flat"] });
    expect(windowLines(q).every((line) => line.amps === null)).toBe(true);
    expect(parameterWindow(q)?.amps).toMatchObject({ low: 130, high: 350 });
  });
});

const sizes = [0.8, 0.9, 1, 1.2, 1.3, 1.6, 1.7, 1.8, 2, 2.4, 3] as const;
const everyQuery: readonly WindowQuery[] = electrodeClasses.flatMap((electrode) =>
  sizes.flatMap((diameterMm) =>
    electrodePositions.flatMap((position) =>
      ([null, ...transfers] as const).map((transfer) => ({
        electrode,
        diameterMm,
        gas: null,
        transfer,
        positions: [position],
      })),
    ),
  ),
);

describe("sweep over every wire, size and position", () => {
  test("on every line volts and amps rise with the feed, inside the row's own ends", () => {
    let lines = 0;
    for (const q of everyQuery)
      for (const line of windowLines(q)) {
        lines += 1;
        const [low, high] = line.feedMPerMin;
        expect(high).toBeGreaterThan(low);
        let before = { volts: -Infinity, amps: -Infinity };
        for (let step = 0; step <= 8; step += 1) {
          const feed = low + ((high - low) * step) / 8;
          const at = lineAtFeed(line, feed, 1e-9)!;
          const volts = at.volts ?? Infinity;
          const amps = at.amps ?? Infinity;
          expect(volts).toBeGreaterThanOrEqual(before.volts);
          expect(amps).toBeGreaterThanOrEqual(before.amps);
          if (at.voltsBand && line.volts) {
            expect(at.voltsBand[0]).toBeLessThanOrEqual(volts);
            expect(at.voltsBand[1]).toBeGreaterThanOrEqual(volts);
            expect(at.voltsBand[0]).toBeGreaterThanOrEqual(line.volts[0]);
            expect(at.voltsBand[1]).toBeLessThanOrEqual(line.volts[1]);
          }
          before = { volts, amps };
        }
      }
    expect(lines).toBeGreaterThan(300);
  });

  test("out of position a line is a part of a level one, or printed for the position; nothing burns below the row", () => {
    const level: readonly ElectrodePosition[] = ["flat", "horizontal"];
    for (const q of everyQuery) {
      const flat = windowLines({ ...q, positions: level });
      for (const line of windowLines(q).filter(({ derived }) => derived)) {
        const whole = flat.find(
          (one) =>
            one.feedMPerMin[0] === line.feedMPerMin[0] &&
            one.feedMPerMin[1] > line.feedMPerMin[1] &&
            one.volts?.[0] === line.volts?.[0],
        );
        expect(whole, `${q.electrode.id} ${q.diameterMm}`).toBeDefined();
      }
    }
  });
});

const queryArb = fc.record({
  electrode: fc.constantFrom(...electrodeClasses),
  diameterMm: fc.constantFrom(...sizes),
  gas: fc.option(fc.constantFrom(...gases)),
  transfer: fc.option(fc.constantFrom(...transfers)),
  positions: fc.subarray([...electrodePositions], { minLength: 1 }),
});

const positiveStep = fc.double({ min: 0.01, max: 5, noNaN: true });

test("law: not knowing gas, position or transfer never narrows the volts that go with a feed", () => {
  fc.assert(
    fc.property(queryArb, fc.double({ min: 0.5, max: 20, noNaN: true }), (q, feed) => {
      const known = voltsAtFeed(q, feed);
      // A feed that no row covers leaves the pair open: then all the volts of the rows stand, never none.
      if (known === null) {
        expect(parameterWindow(q)?.volts ?? null).toBeNull();
        return;
      }
      for (const less of [{ positions: electrodePositions }, { gas: null }] as const) {
        const wider = voltsAtFeed({ ...q, ...less }, feed);
        expect(wider?.low).toBeLessThanOrEqual(known.low);
        expect(wider?.high).toBeGreaterThanOrEqual(known.high);
      }
    }),
    { numRuns: inDepth(100, 4000), seed: 7 },
  );
});

test("law: knowing the feed never allows volts that no row gives", () => {
  fc.assert(
    fc.property(queryArb, fc.double({ min: 0.5, max: 20, noNaN: true }), (q, feed) => {
      const at = voltsAtFeed(q, feed);
      const all = parameterWindow(q)?.volts ?? null;
      if (at === null) return;
      expect(all).not.toBeNull();
      expect(at.low).toBeGreaterThanOrEqual(all!.low - 1e-9);
      expect(at.high).toBeLessThanOrEqual(all!.high + 1e-9);
    }),
    { numRuns: inDepth(100, 4000), seed: 8 },
  );
});

test("law: with more feed neither end of the volts that go with it comes down", () => {
  fc.assert(
    fc.property(queryArb, fc.double({ min: 0.5, max: 20, noNaN: true }), positiveStep, (q, feed, more) => {
      for (const position of q.positions) {
        const one = { ...q, positions: [position] };
        const [at, above] = [voltsAtFeed(one, feed), voltsAtFeed(one, feed + more)];
        if (!at?.covered || !above?.covered) continue;
        expect(above.high).toBeGreaterThanOrEqual(at.high - 1e-9);
        expect(above.low).toBeGreaterThanOrEqual(at.low - 1e-9);
      }
    }),
    { numRuns: inDepth(100, 4000), seed: 9 },
  );
});
