import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { renderTruth } from "@/demo-images";
import { spotsOf } from "@/demo-images/street/spots-of";
import { inDepth } from "../../setup/in-depth";
import { matchSpots, type Round } from "./rendered/spot-match";
import type { SpotLine } from "./rendered/spot-study";
import { calibrated, spotFigures, spotTables } from "./rendered/spot-tables";

const round: fc.Arbitrary<Round> = fc.record({
  kind: fc.constantFrom("hole" as const, "spatter" as const),
  x: fc.double({ min: 0, max: 200, noNaN: true }),
  y: fc.double({ min: 0, max: 200, noNaN: true }),
  radius: fc.double({ min: 4, max: 15, noNaN: true }),
});

describe("what is said matched with what is there", () => {
  it("takes each truth once, of its kind, within its round; and what comes after changes nothing", () => {
    fc.assert(
      fc.property(fc.array(round, { maxLength: 12 }), fc.array(round, { maxLength: 20 }), (truths, said) => {
        const whole = matchSpots(truths, said);
        const taken = whole.filter((i) => i >= 0);
        expect(new Set(taken).size).toBe(taken.length);
        whole.forEach((i, n) => {
          if (i < 0) return;
          const [truth, one] = [truths[i]!, said[n]!];
          expect(one.kind).toBe(truth.kind);
          expect(Math.hypot(one.x - truth.x, one.y - truth.y)).toBeLessThanOrEqual(truth.radius + 3);
        });
        expect(matchSpots(truths, said.slice(0, 5))).toEqual(whole.slice(0, 5));
        expect(matchSpots(truths, truths)).not.toContain(-1);
      }),
      { seed: 3, numRuns: inDepth(100, 2000) },
    );
  });
});

/** Two holes asked for, one of them small for its class; four suggestions, three of holes, with their boxes at random. */
const line: SpotLine = {
  study: "spots",
  by: "network",
  kind: "kept-street",
  n: 0,
  scenario: "made-up",
  refused: null,
  truths: [
    ["hole", 20, 1],
    ["hole", 10, 1],
    ["hole", 7, 1],
    ["spatter", 12, 0],
  ],
  found: [
    ["hole", 0.9, 18, 0, 2, 1],
    ["hole", 0.6, 11, -1, 4, 4],
    ["hole", 0.5, 9, 2, 0, 0],
    ["spatter", 0.8, 12, 3, 1, 0],
  ],
  seconds: 1,
};

describe("recall and precision", () => {
  it("are those counted by hand, beside boxes at random", () => {
    expect(spotFigures([line], "hole", 0.1)).toEqual({
      pictures: 1,
      asked: 2,
      suggested: 3,
      // The third is a hole, though too small to be asked for.
      precision: 2 / 3,
      recall: 1 / 2,
      boxPrecision: expect.closeTo(6 / 20 / 3, 9) as number,
      boxRecall: expect.closeTo(5 / 20 / 2, 9) as number,
    });
    expect(spotFigures([line], "hole", 0.7)).toMatchObject({ suggested: 1, precision: 1, recall: 1 / 2 });
    expect(spotFigures([line], "hole", 0.1, [14, 22])).toMatchObject({ asked: 1, suggested: 1, recall: 1 });
    // A ball off the zone is nobody's question; a suggestion that is one is right all the same.
    expect(spotFigures([line], "spatter", 0.1)).toMatchObject({ asked: 0, suggested: 1, precision: 1 });
  });

  it("are brought to a level on the calibration's pictures alone", () => {
    const own = (kind: SpotLine["kind"]): SpotLine => ({
      ...line,
      kind,
      truths: Array.from({ length: 40 }, () => ["hole", 12, 1]),
      found: Array.from({ length: 40 }, (_, i) => ["hole", 0.955 - i / 50, 12, i < 30 ? i : -1, 0, 0]),
    });
    expect(calibrated([own("kept-street")], "hole")).toBeNull();
    // Of 31 down to 0.355 thirty are right; with the 32nd, at 0.335, too few.
    expect(calibrated([own("calibration")], "hole")).toBe(0.34);
    expect(spotTables([own("calibration"), line], "2026-11-27")).toContain("| kept-street | 1 of 1 | hole |");
  });
});

describe("where holes and balls truly are", () => {
  it("is what the generator recorded: as many, and each the circle of its outline's area", () => {
    const truth = renderTruth({ scenario: "corner-linear-pores", seed: 1, megapixels: 0.4 });
    const spots = spotsOf(truth);
    const of = (kinds: readonly string[]) =>
      truth.imperfections.filter(
        ({ kind, outlinePx }) =>
          kinds.includes(kind) &&
          outlinePx.every(([x, y]) => x > 0 && y > 0 && x < truth.widthPx && y < truth.heightPx),
      );
    const holes = of(["surface-porosity", "crater-pipe", "wormhole"]);
    expect(holes.length).toBeGreaterThan(8);
    expect(spots.filter(({ kind }) => kind === "hole")).toHaveLength(holes.length);
    expect(spots.filter(({ kind }) => kind === "spatter").length).toBeGreaterThanOrEqual(
      of(["spatter"]).length,
    );
    holes.forEach(({ outlinePx }, i) => {
      const { x, y, radiusPx } = spots.filter(({ kind }) => kind === "hole")[i]!;
      const far = outlinePx.map(([px, py]) => Math.hypot(px - x, py - y));
      // An ellipse's semi-axes lie to either side of the radius of the circle of its area.
      expect(Math.min(...far)).toBeLessThanOrEqual(radiusPx * 1.02);
      expect(Math.max(...far)).toBeGreaterThanOrEqual(radiusPx * 0.98);
      expect(Math.max(...far)).toBeLessThan(2 * radiusPx);
    });
  });
});
