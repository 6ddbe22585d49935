import { teeProfile } from "../geometry/profile";
import { mixSeed } from "../noise/random";
import { beadOf, gasShielded, poseOf, ripplesOf, sceneOf, setupOf, type Scenario } from "./parts";

/** A thin fillet with a hollow face: less throat than its width promises. */
export const teeHollowUndersized: Scenario = (seed) =>
  sceneOf(seed, {
    title: "Undersized T-joint fillet with a concave face",
    setup: setupOf({
      ...gasShielded,
      joint: "tee",
      position: "horizontal",
      thicknessMm: 8,
      travelSpeedMmPerMin: 560,
      targetLegMm: 6,
      weldLengthMm: 88,
    }),
    profile: teeProfile(),
    thicknessMm: 8,
    area: { x0: -64, x1: 62, y0: -52, y1: 32 },
    plate: { finish: "ground", seed: mixSeed(seed, 20), heatBandMm: 4.5, rust: 0.03, groundStripMm: 0 },
    beads: [
      beadOf({
        startMm: -45,
        endMm: 43,
        leftMm: -3.1,
        rightMm: 3,
        crownMm: -0.65,
        capPower: 1,
        startLump: 0,
        ripple: ripplesOf.gasShielded,
        craterDepthMm: 0.5,
        seed: mixSeed(seed, 1),
      }),
    ],
    faults: [
      { kind: "bead-shape", id: "concave-face" },
      { kind: "bead-shape", id: "undersized", targetLegMm: 6 },
      { kind: "spatter", count: 12, medianMm: 0.6, spreadMm: 8, seed: mixSeed(seed, 31) },
    ],
    bench: "paper",
    lighting: "window",
    scaleObject: { kind: "card", side: "left", placement: { xMm: 3, vMm: -38, turnDeg: 2 }, sizeMm: 0 },
    pose: poseOf({ target: [0, -17], fieldWidthMm: 128, tiltDeg: 10, azimuthDeg: 10, rollDeg: -1.2 }),
  });
