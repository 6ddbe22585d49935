import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Toes } from "@/lib/marks";
import { calibrate, defaultMeasureOptions } from "@/lib/measure";
import { drawnProfile, isGuess, stationsOf } from "@/lib/trace";

/** Ten pixels a millimetre. */
const scale = calibrate(
  { kind: "two-points", a: { x: 0, y: 0 }, b: { x: 1000, y: 0 }, lengthMm: 100 },
  { ...defaultMeasureOptions, photo: null },
);
if (!scale.ok) throw new Error("the scale must do");
const calibration = scale.value;

/** A bead 8 mm wide, and from 30 to 60 mm along 10 mm, where metal lies over its lower toe. */
function toes(sure: (i: number) => number): Toes {
  const line = (y: (x: number) => number) =>
    Array.from({ length: 101 }, (_, i) => ({ x: 100 + 10 * i, y: y(10 * i), sigmaPx: 1, sure: sure(i) }));
  const rolled = (x: number): boolean => x >= 300 && x <= 600;
  return {
    origin: "traced",
    reader: "2",
    upper: line(() => 460),
    lower: line((x) => (rolled(x) ? 560 : 540)),
  };
}

const overlap = (from: number, to: number, imperfection: "overlap" | "spatter" = "overlap") => ({
  id: "m",
  imperfection,
  shape: { kind: "line" as const, points: [from, to].map((x) => ({ x: 100 + x, y: 550 })) },
  place: null,
  stretch: null,
  patterns: [],
  gauge: [],
  note: "",
});

describe("the profile of drawn toes", () => {
  it("leaves out the stretch alongside a mark of overlap, and no other mark's", () => {
    fc.assert(
      fc.property(fc.integer({ min: 285, max: 299 }), fc.integer({ min: 601, max: 620 }), (from, to) => {
        const mean = (marks: Parameters<typeof drawnProfile>[2]): number =>
          drawnProfile(
            calibration,
            toes(() => 1),
            marks,
          )!.mean.value;
        expect(mean([overlap(from, to)])).toBeCloseTo(8, 6);
        expect(mean([])).toBeGreaterThan(8.4);
        expect(mean([overlap(from, to, "spatter")])).toBeCloseTo(mean([]), 9);
      }),
      { seed: 8, numRuns: 8 },
    );
  });

  it("states no width where the toes are a guess, until a person moved half of them", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 101 }), (moved) => {
        const drawn = toes((i) => (i < moved ? 1 : 0.48));
        expect(isGuess(stationsOf(drawn))).toBe(moved <= 50);
        expect(drawnProfile(calibration, drawn, []) === null).toBe(moved <= 50);
      }),
      { seed: 9, numRuns: 60 },
    );
  });

  it("is none where hardly anything is left beside the marks", () => {
    expect(
      drawnProfile(
        calibration,
        toes(() => 1),
        [overlap(0, 1000)],
      ),
    ).toBeNull();
  });
});
