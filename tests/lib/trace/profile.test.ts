import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { calibrate, defaultMeasureOptions } from "@/lib/measure";
import { beadProfile } from "@/lib/trace/profile";
import type { TraceStation } from "@/lib/trace/types";
import { random } from "../diagnose/sweep/grid";
import { inDepth } from "../../setup/in-depth";

/** Ten pixels a millimetre. */
const scale = calibrate(
  { kind: "two-points", a: { x: 0, y: 0 }, b: { x: 1000, y: 0 }, lengthMm: 100 },
  { ...defaultMeasureOptions, photo: null },
);
if (!scale.ok) throw new Error("the scale must do");
const calibration = scale.value;

/** Stations along a bead whose half-width and middle are known, px. */
function stations(half: (x: number) => number, middle: (x: number) => number, sigmaPx = 0): TraceStation[] {
  return Array.from({ length: 161 }, (_, i) => {
    const x = 100 + 5 * i;
    const toe = (y: number) => ({ at: { x, y }, sigmaPx, sure: 1, spread: 0 });
    const [upper, lower] = [toe(500 + middle(x) - half(x)), toe(500 + middle(x) + half(x))];
    return { alongPx: x - 100, upper, lower, widthPx: 2 * half(x), end: i < 10 || i > 150 };
  });
}

describe("a bead's profile", () => {
  it("gives the width, its spread and its widest place as they were drawn", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 30, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 0.15, noNaN: true }),
        (half, share) => {
          // Seven whole waves between the ends, so that their mean is nought and their deviation share over root two.
          const wave = (x: number): number => Math.sin(((x - 150) / 700) * 14 * Math.PI);
          const profile = beadProfile(calibration, {
            stations: stations(
              (x) => half * (1 + share * wave(x)),
              () => 0,
            ),
          })!;
          expect(Math.abs(profile.mean.value / (half / 5) - 1)).toBeLessThan(0.01);
          expect(profile.spread).toBeCloseTo(share / Math.SQRT2, 1.8);
          expect(profile.widest.width.value).toBeLessThanOrEqual((half / 5) * (1 + share) * 1.001);
          expect(profile.offStraight.value).toBeCloseTo(0, 6);
          expect(profile.worst25!.differenceMm).toBeCloseTo(2 * share * (half / 5), 0);
        },
      ),
      { seed: 2, numRuns: 30 },
    );
  });

  it("takes scatter for no difference of the bead, and a difference well above it for one", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 3, noNaN: true }),
        fc.integer({ min: 1, max: 1_000_000 }),
        (sigmaPx, seed) => {
          const chance = random(seed);
          // Twelve even chances less six: as good as normal, deviation 1.
          const normal = () => Array.from({ length: 12 }, chance).reduce((a, b) => a + b) - 6;
          const own = stations(
            () => 40,
            () => 0,
          ).map(() => (sigmaPx * normal()) / Math.SQRT2);
          const of = (bump: number) =>
            beadProfile(calibration, {
              stations: stations(
                (x) => 40 + own[(x - 100) / 5]! + (x > 480 && x < 520 ? bump : 0),
                () => 0,
                sigmaPx,
              ),
            })!.worst25!;
          const [even, swollen] = [of(0), of(8 * sigmaPx)];
          expect(even.differenceMm).toBeLessThanOrEqual(even.doubtMm);
          expect(swollen.differenceMm).toBeGreaterThan(swollen.doubtMm);
        },
      ),
      { seed: 5, numRuns: inDepth(60, 600) },
    );
  });

  it("gives a bow's height over its chord's fitted line", () => {
    const profile = beadProfile(calibration, {
      stations: stations(
        () => 40,
        (x) => 20 * Math.sin(((x - 100) / 800) * Math.PI),
      ),
    })!;
    // A half-wave of 2 mm: the line through it takes its mean over what is read (37.5 degrees in from either end left out).
    expect(profile.offStraight.value).toBeGreaterThan(0.6);
    expect(profile.offStraight.value).toBeLessThan(1.6);
    expect(profile.waviness[0]).toBeLessThan(0.02);
  });

  it("widens with the trace's doubt, and its spread is never less than the bead's own", () => {
    const wave = (x: number): number => 2 * Math.SQRT2 * Math.sin(x * 1.7);
    const of = (sigmaPx: number) =>
      beadProfile(calibration, {
        stations: stations(
          (x) => 40 + wave(x),
          () => 0,
          sigmaPx,
        ),
      })!;
    const at = (p: ReturnType<typeof of>) => p.stations[80]!.width.expandedUncertainty;
    expect(at(of(5.7))).toBeGreaterThan(1.3 * at(of(0)));
    expect(of(5.7).spread).toBeGreaterThan(0.045);
  });

  it("is none of a few stations", () => {
    expect(
      beadProfile(calibration, {
        stations: stations(
          () => 40,
          () => 0,
        ).slice(0, 12),
      }),
    ).toBeNull();
  });
});
