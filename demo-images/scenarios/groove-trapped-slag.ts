import { grooveProfile } from "../geometry/profile";
import { mixSeed } from "../noise/random";
import { beadOf, gasShielded, poseOf, ripplesOf, sceneOf, setupOf, type Scenario } from "./parts";

/** Groove over backing, part filled: slag left in the valley between two fill beads and at the bevel. */
export const grooveTrappedSlag: Scenario = (seed) => {
  const line = (from: number, to: number, y: number) =>
    Array.from(
      { length: 9 },
      (_, i) => [from + ((to - from) * i) / 8, y + 0.25 * Math.sin(i * 1.7)] as const,
    );
  return sceneOf(seed, {
    title: "Groove over backing with slag trapped between the fill beads",
    setup: setupOf({
      ...gasShielded,
      joint: "groove-backed",
      thicknessMm: 10,
      passCount: 3,
      weldLengthMm: 90,
    }),
    profile: grooveProfile({ thicknessMm: 10, rootGapMm: 6, includedAngleDeg: 45 }),
    thicknessMm: 14,
    area: { x0: -66, x1: 66, y0: -36, y1: 38 },
    plate: { finish: "mill-scale", seed: mixSeed(seed, 20), heatBandMm: 5, rust: 0.1, groundStripMm: 15 },
    weld: { seed: mixSeed(seed, 21), oxide: 0.4, tint: 0 },
    beads: [
      beadOf({
        name: "root",
        startMm: -58,
        endMm: 56,
        leftMm: -4.6,
        rightMm: 4.6,
        crownMm: 0.3,
        ripple: ripplesOf.gasShielded,
        seed: mixSeed(seed, 1),
      }),
      beadOf({
        name: "fill 1",
        startMm: -52,
        endMm: 47,
        leftMm: -6.1,
        rightMm: 1.1,
        crownMm: 1.6,
        capPower: 0.8,
        ripple: ripplesOf.gasShielded,
        seed: mixSeed(seed, 2),
      }),
      beadOf({
        name: "fill 2",
        startMm: -49,
        endMm: 44,
        leftMm: -0.3,
        rightMm: 6.3,
        crownMm: 1.7,
        capPower: 0.75,
        ripple: ripplesOf.gasShielded,
        seed: mixSeed(seed, 3),
      }),
    ],
    faults: [
      { kind: "slag-line", along: { path: line(-34, -6, -0.2) }, widthMm: 1.3, seed: mixSeed(seed, 4) },
      { kind: "slag-line", along: { path: line(6, 30, -0.1) }, widthMm: 1.1, seed: mixSeed(seed, 5) },
      { kind: "slag-line", along: { path: line(-20, 8, 6.1) }, widthMm: 1.2, seed: mixSeed(seed, 6) },
      { kind: "spatter", count: 34, medianMm: 0.9, spreadMm: 8, seed: mixSeed(seed, 31) },
    ],
    bench: "steel-table",
    lighting: "overhead",
    scaleObject: { kind: "rule", side: "right", placement: { xMm: 0, vMm: 17, turnDeg: 1.2 }, sizeMm: 100 },
    pose: poseOf({ target: [0, 3], fieldWidthMm: 124, tiltDeg: 16, azimuthDeg: 12, rollDeg: -1.4 }),
  });
};
