import { grooveProfile } from "../geometry/profile";
import { mixSeed } from "../noise/random";
import { beadOf, gasShielded, poseOf, ripplesOf, sceneOf, setupOf, type Scenario } from "./parts";

/** A sound cap after a rough hand: part of it ground below the plate, the grinder slipped, slag was hammered at. */
export const buttToolMarks: Scenario = (seed) =>
  sceneOf(seed, {
    title: "Butt weld ground below the plate, with grinding and chipping marks and a torn-off tack",
    setup: setupOf({
      ...gasShielded,
      joint: "groove-backed",
      thicknessMm: 10,
      passCount: 3,
      weldLengthMm: 100,
    }),
    profile: grooveProfile({ thicknessMm: 10, rootGapMm: 5, includedAngleDeg: 40 }),
    thicknessMm: 14,
    area: { x0: -66, x1: 66, y0: -44, y1: 36 },
    plate: { finish: "mill-scale", seed: mixSeed(seed, 20), heatBandMm: 5, rust: 0.1, groundStripMm: 0 },
    weld: { seed: mixSeed(seed, 21), oxide: 0.4, tint: 0 },
    beads: [
      beadOf({
        name: "fill",
        startMm: -58,
        endMm: 56,
        leftMm: -5.4,
        rightMm: 5.4,
        crownMm: 0.2,
        ripple: ripplesOf.gasShielded,
        seed: mixSeed(seed, 1),
      }),
      beadOf({
        name: "cap",
        startMm: -52,
        endMm: 48,
        leftMm: -7.2,
        rightMm: 7.2,
        crownMm: 1.8,
        ripple: { ...ripplesOf.gasShielded, pitchMm: 1.1, heightMm: 0.1 },
        craterDepthMm: 0.5,
        seed: mixSeed(seed, 2),
      }),
    ],
    faults: [
      { kind: "underflushing", fromMm: -46, toMm: -8, halfWidthMm: 13, depthMm: 0.8, seed: mixSeed(seed, 3) },
      {
        kind: "grinding-mark",
        xMm: -34,
        yMm: 22,
        lengthMm: 19,
        widthMm: 4.4,
        depthMm: 0.5,
        headingDeg: 24,
        seed: mixSeed(seed, 4),
      },
      {
        kind: "chipping-marks",
        side: "left",
        count: 7,
        fromMm: 2,
        toMm: 40,
        lengthMm: 4.4,
        widthMm: 1.2,
        depthMm: 0.45,
        seed: mixSeed(seed, 5),
      },
      {
        kind: "torn-surface",
        xMm: 26,
        yMm: 22,
        lengthMm: 16,
        widthMm: 7,
        depthMm: 0.7,
        seed: mixSeed(seed, 6),
      },
      { kind: "spatter", count: 14, medianMm: 0.7, spreadMm: 8, seed: mixSeed(seed, 31) },
    ],
    bench: "concrete",
    lighting: "raking",
    scaleObject: { kind: "rule", side: "left", placement: { xMm: 0, vMm: -25, turnDeg: -0.8 }, sizeMm: 100 },
    pose: poseOf({ target: [0, -4], fieldWidthMm: 134, tiltDeg: 12, azimuthDeg: 18, rollDeg: 1 }),
  });
