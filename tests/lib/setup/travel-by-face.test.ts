import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { emptyRunSetup, legAt, travelByFace, type RunSetup } from "@/lib/setup";

const fillet: RunSetup = {
  ...emptyRunSetup,
  process: "FCAW-G",
  joint: "tee",
  electrodeClass: "E71T-1C",
  electrodeDiameterMm: 1.2,
};

/**
 * How wide the face of an equal-leg fillet looks in the plane of the lower plate, by plain projection: the toes lie at (leg, 0)
 * and (0, leg), the second is carried down to the plate along the line of sight. `tilt`: degrees from the plate's square,
 * towards the face.
 */
const seenWidth = (legMm: number, tiltDeg: number): number =>
  legMm + legMm * Math.tan((tiltDeg * Math.PI) / 180);

describe("travel by the width of a face", () => {
  const beads = fc.record({
    feed: fc.double({ min: 4, max: 12, noNaN: true }),
    travel: fc.double({ min: 120, max: 700, noNaN: true }),
    tilt: fc.double({ min: 0, max: 45, noNaN: true }),
    doubt: fc.double({ min: 0.01, max: 0.15, noNaN: true }),
    /** Where the true width lies within what was stated. */
    off: fc.double({ min: -1, max: 1, noNaN: true }),
  });

  it("holds the travel that laid the bead, from wherever it was photographed", () => {
    fc.assert(
      fc.property(beads, ({ feed, travel, tilt, doubt, off }) => {
        const leg = legAt(fillet, feed, travel)!.value;
        const seen = seenWidth(leg, tilt) * (1 + off * doubt);
        const face = { value: seen, expandedUncertainty: 1.2 * doubt * seen };
        const { low, high } = travelByFace({ ...fillet, wireFeedMPerMin: feed }, face)!;
        expect(low).toBeLessThanOrEqual(travel);
        expect(high).toBeGreaterThanOrEqual(travel);
      }),
      { seed: 31, numRuns: 500 },
    );
  });

  // 8 mm in the plate's plane: a leg of 4 to 8 mm, 8 to 32 mm² flat. 9 m/min of 1.2 mm wire are 10 179 mm³ a minute.
  it("is the metal balance anybody can work out", () => {
    const face = { value: 8, expandedUncertainty: 0.01 };
    const { low, high } = travelByFace({ ...fillet, wireFeedMPerMin: 9 }, face)!;
    expect(low).toBeLessThan(10_179 / 32);
    expect(low).toBeGreaterThan((0.4 * 10_179) / 32);
    expect(high).toBeLessThan((1.3 * 10_179) / 8);
    expect(high).toBeGreaterThan((0.7 * 10_179) / 8);
  });

  it("is silent where width alone says nothing", () => {
    const face = { value: 8, expandedUncertainty: 0.5 };
    const run = { ...fillet, wireFeedMPerMin: 9 };
    expect(travelByFace(run, face)).not.toBeNull();
    expect(travelByFace({ ...run, joint: "butt-backed" }, face)).toBeNull();
    expect(travelByFace({ ...run, wireFeedMPerMin: null }, face)).toBeNull();
    expect(travelByFace({ ...run, targetLegMm: 14 }, face)).toBeNull();
    expect(travelByFace({ ...run, passCount: 1 }, face)).not.toBeNull();
    expect(travelByFace({ ...run, passCount: 2 }, face)).toBeNull();
    expect(travelByFace(run, { value: 8, expandedUncertainty: 8 })).toBeNull();
  });
});
