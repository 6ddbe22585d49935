import { grooveProfile } from "../geometry/profile";
import { mixSeed } from "../noise/random";
import { beadOf, gasShielded, poseOf, ripplesOf, sceneOf, setupOf, type Scenario } from "./parts";

/** Capping pass that left the groove short of the plate along one stretch, with a step between the plates. */
export const grooveUnderfill: Scenario = (seed) =>
  sceneOf(seed, {
    title: "Groove weld with underfill and a step between the plates",
    setup: setupOf({
      ...gasShielded,
      joint: "groove-backed",
      thicknessMm: 8,
      passCount: 3,
      travelSpeedMmPerMin: 420,
      weldLengthMm: 92,
    }),
    profile: grooveProfile({ thicknessMm: 8, rootGapMm: 5, includedAngleDeg: 45, stepMm: 1.2 }),
    thicknessMm: 12,
    area: { x0: -68, x1: 68, y0: -38, y1: 34 },
    plate: { finish: "mill-scale", seed: mixSeed(seed, 20), heatBandMm: 5.5, rust: 0.12, groundStripMm: 13 },
    beads: [
      beadOf({
        name: "fill",
        startMm: -56,
        endMm: 52,
        leftMm: -4.6,
        rightMm: 4.9,
        crownMm: 0.2,
        ripple: ripplesOf.gasShielded,
        seed: mixSeed(seed, 1),
      }),
      beadOf({
        name: "cap",
        startMm: -48,
        endMm: 44,
        leftMm: -5.4,
        rightMm: 5.3,
        crownMm: -1.1,
        startLump: 0,
        unevenWidth: 0.05,
        ripple: { ...ripplesOf.gasShielded, pitchMm: 1.1, heightMm: 0.1 },
        craterDepthMm: 0.7,
        seed: mixSeed(seed, 2),
      }),
    ],
    faults: [
      { kind: "bead-shape", id: "underfill" },
      { kind: "bead-shape", id: "misalignment" },
      { kind: "clamp-mark", xMm: -44, yMm: 23, diameterMm: 19, seed: mixSeed(seed, 9) },
      { kind: "stuck-slag", x: -22, y: 2.2, radiusMm: 1.7, heightMm: 0.25, seed: mixSeed(seed, 4) },
      { kind: "spatter", count: 26, medianMm: 0.8, spreadMm: 8, seed: mixSeed(seed, 31) },
    ],
    bench: "rubber-mat",
    lighting: "raking",
    scaleObject: { kind: "rule", side: "left", placement: { xMm: 0, vMm: -17, turnDeg: -0.9 }, sizeMm: 100 },
    pose: poseOf({ target: [0, -4], fieldWidthMm: 126, tiltDeg: 14, azimuthDeg: 16, rollDeg: 0.8 }),
  });
