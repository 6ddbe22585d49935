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
    area: { x0: -62, x1: 60, y0: -36, y1: 30 },
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
      { kind: "bead-shape", id: "concave-face", sizes: { concavityMm: 0.65 } },
      { kind: "bead-shape", id: "undersized", sizes: { targetLegMm: 6, legMm: 4.3 } },
      { kind: "spatter", count: 12, medianMm: 0.6, spreadMm: 8, seed: mixSeed(seed, 31) },
    ],
    bench: "paper",
    lighting: "window",
    scaleObject: { kind: "card", side: "left", placement: { xMm: 4, vMm: -37, turnDeg: 2 }, sizeMm: 0 },
    pose: poseOf({ target: [0, -9], fieldWidthMm: 112, tiltDeg: 10, azimuthDeg: 10, rollDeg: -1.2 }),
  });
