import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { flatThroat, legOfThroat, solveFillet, throatOfLeg, type Quantity } from "@/lib/measure";
import { filletReadings, toeToToe, type FilletReadings } from "@/lib/measure/fillet-section";

const read = (value: number, expandedUncertainty = 0.1): Quantity => ({
  unit: "mm",
  value,
  expandedUncertainty,
  source: "gauge",
  budget: [],
});
const legs = fc.double({ min: 3, max: 20, noNaN: true });
const angles = fc.double({ min: 60, max: 120, noNaN: true });
const seeded = { seed: 20261126, numRuns: 300 };

/** AWS A3.0 (from memory): the size of a fillet is the leg of the largest triangle that fits its section. */
describe("closed forms", () => {
  it("a right angle with equal legs: throat z / root 2, width z root 2", () => {
    expect(flatThroat(8, 8)).toBeCloseTo(8 / Math.SQRT2, 12);
    expect(toeToToe(8, 8)).toBeCloseTo(8 * Math.SQRT2, 12);
    expect(legOfThroat(8 / Math.SQRT2)).toBeCloseTo(8, 12);
    expect(throatOfLeg(8)).toBeCloseTo(8 / Math.SQRT2, 12);
  });

  it("legs 3 and 4: width 5, throat 12/5", () => {
    expect(toeToToe(3, 4)).toBeCloseTo(5, 12);
    expect(flatThroat(3, 4)).toBeCloseTo(2.4, 12);
  });

  it("60 and 120 degrees: an equilateral triangle and half of one", () => {
    expect(toeToToe(6, 6, 60)).toBeCloseTo(6, 12);
    expect(flatThroat(6, 6, 60)).toBeCloseTo(3 * Math.sqrt(3), 12);
    expect(flatThroat(6, 6, 120)).toBeCloseTo(3, 12);
    expect(legOfThroat(3, 120)).toBeCloseTo(6, 12);
  });

  it("throat of leg and leg of throat undo each other at every angle", () => {
    fc.assert(
      fc.property(legs, angles, (z, angle) => {
        expect(legOfThroat(throatOfLeg(z, angle), angle)).toBeCloseTo(z, 9);
        expect(flatThroat(z, z, angle)).toBeCloseTo(throatOfLeg(z, angle), 9);
      }),
      seeded,
    );
  });
});

describe("all gauges together", () => {
  const all = (z1: number, z2: number, c: number, angle: number): FilletReadings => ({
    leg1: read(z1),
    leg2: read(z2),
    convexity: read(c),
    throat: read(flatThroat(z1, z2, angle) + c),
    width: read(toeToToe(z1, z2, angle)),
  });

  it("find the fillet they were read on, and no contradiction", () => {
    fc.assert(
      fc.property(legs, legs, fc.double({ min: -1, max: 2, noNaN: true }), angles, (z1, other, c, angle) => {
        const z2 = Math.min(Math.max(other, z1 / 2), z1 * 2);
        const { best, conflict, chiSquare, redundant } = solveFillet(all(z1, z2, c, angle), angle);
        expect(conflict).toEqual([]);
        expect(redundant).toBe(2);
        expect(chiSquare).toBeLessThan(1e-12);
        expect(best.leg1!.value).toBeCloseTo(z1, 6);
        expect(best.leg2!.value).toBeCloseTo(z2, 6);
        expect(best.convexity!.value).toBeCloseTo(c, 6);
      }),
      seeded,
    );
  });

  it("give what was not read wherever the rest determines it, and nothing where it does not", () => {
    const { throat: _, ...noThroat } = all(6, 8, 0.5, 90);
    expect(solveFillet(noThroat).best.throat!.value).toBeCloseTo(4.8 + 0.5, 6);
    expect(solveFillet({ leg1: read(6), width: read(10) }).best.leg2!.value).toBeCloseTo(8, 6);
    const alone = solveFillet({ throat: read(4) }).best;
    expect([alone.leg1, alone.leg2, alone.convexity, alone.width]).toEqual([null, null, null, null]);
    expect(alone.throat!.value).toBeCloseTo(4, 6);
    expect(solveFillet({}).best.leg1).toBeNull();
  });

  it("are surer together than each for itself", () => {
    const { best } = solveFillet(all(6, 8, 0.5, 90));
    for (const name of filletReadings)
      expect(best[name]!.U, name).toBeLessThan(2 * Math.hypot(0.1 / 2, 0.2) + 1e-12);
  });

  it("do not care which plate is called the first", () => {
    fc.assert(
      fc.property(legs, legs, fc.double({ min: -1, max: 2, noNaN: true }), (z1, z2, c) => {
        const there = solveFillet({ ...all(z1, z2, c, 90), throat: read(flatThroat(z1, z2) + c + 0.3) });
        const back = solveFillet({ ...all(z2, z1, c, 90), throat: read(flatThroat(z1, z2) + c + 0.3) });
        expect(back.chiSquare).toBeCloseTo(there.chiSquare, 6);
        expect(back.best.leg1!.value).toBeCloseTo(there.best.leg2!.value, 6);
      }),
      seeded,
    );
  });

  it("weigh a fine gauge more than a coarse one", () => {
    const coarse = solveFillet({ leg1: read(6), leg2: read(6), convexity: read(0), throat: read(4.6, 2) });
    expect(coarse.best.throat!.value).toBeLessThan(4.4);
    expect(coarse.conflict).toEqual([]);
  });
});

describe("readings that cannot stand together", () => {
  it("legs 6, flat, throat 5.1: no one fillet", () => {
    const { conflict, suspects } = solveFillet({
      leg1: read(6, 0),
      leg2: read(6, 0),
      convexity: read(0, 0),
      throat: read(5.1, 0),
    });
    expect([...conflict].sort()).toEqual(["convexity", "leg1", "leg2", "throat"]);
    expect(suspects).toContain("throat");
  });

  it("one misread gauge among five is found, and the others are not blamed for it", () => {
    let blamed = 0;
    const slips = [1.5, 2, 3] as const;
    for (const slip of slips)
      for (const name of ["leg1", "leg2", "throat", "width"] as const) {
        const good = {
          leg1: read(8),
          leg2: read(9),
          convexity: read(0.5),
          throat: read(flatThroat(8, 9) + 0.5),
          width: read(toeToToe(8, 9)),
        };
        const { conflict, suspects } = solveFillet({ ...good, [name]: read(good[name].value + slip) });
        expect(conflict, `${name} ${slip}`).not.toEqual([]);
        if (suspects.includes(name)) blamed++;
      }
    expect(blamed).toBeGreaterThanOrEqual(10);
  });

  it("cry wolf in about one case in a hundred of honest readings", () => {
    // Twelve uniform numbers make a normal one; seeded, so that the count is what it is.
    let state = 7;
    const uniform = (): number => (state = (state * 48271) % 2147483647) / 2147483647;
    const normal = (): number => Array.from({ length: 12 }, uniform).reduce((sum, one) => sum + one, -6);
    const TRIALS = 2000;
    let alarms = 0;
    for (let i = 0; i < TRIALS; i++) {
      const off = (value: number): Quantity => read(value + 0.2 * normal(), 0);
      const readings = {
        leg1: off(7),
        leg2: off(7.5),
        convexity: off(0.4),
        throat: off(flatThroat(7, 7.5) + 0.4),
      };
      if (solveFillet(readings).conflict.length > 0) alarms++;
    }
    // 1 % of 2000 is 20; its standard deviation 4.4.
    expect(alarms).toBeGreaterThan(6);
    expect(alarms).toBeLessThan(34);
  });
});
