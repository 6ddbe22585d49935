import { flatProfile } from "../geometry/profile";
import { mixSeed } from "../noise/random";
import { beadOf, gasShielded, poseOf, ripplesOf, sceneOf, setupOf, type Scenario } from "./parts";

/** Close look at the end of a bead: the arc was snapped off and the dished crater cracked as a star. */
export const craterCrack: Scenario = (seed) =>
  sceneOf(seed, {
    title: "Open end crater with a star crack",
    setup: setupOf({
      ...gasShielded,
      joint: "bead-on-plate",
      thicknessMm: 12,
      wireFeedMPerMin: 9.5,
      travelSpeedMmPerMin: 330,
      weldLengthMm: 110,
    }),
    profile: flatProfile(),
    thicknessMm: 12,
    area: { x0: -100, x1: 34, y0: -33, y1: 30 },
    plate: { finish: "mill-scale", seed: mixSeed(seed, 20), heatBandMm: 6, rust: 0.06, groundStripMm: 12 },
    weld: { seed: mixSeed(seed, 21), oxide: 0.35, tint: 0 },
    beads: [
      beadOf({
        startMm: -94,
        endMm: 16,
        leftMm: -6,
        rightMm: 6,
        crownMm: 2.4,
        ripple: ripplesOf.gasShielded,
        craterDepthMm: 1.7,
        seed: mixSeed(seed, 1),
      }),
    ],
    faults: [
      { kind: "open-crater" },
      { kind: "crater-crack", arms: 4, lengthMm: 2.9, widthMm: 0.11, seed: mixSeed(seed, 2) },
      { kind: "silicate", x: -16, y: 1.5, radiusMm: 0.8, heightMm: 0.15, seed: mixSeed(seed, 4) },
      { kind: "silicate", x: -27, y: -2, radiusMm: 0.6, heightMm: 0.12, seed: mixSeed(seed, 5) },
      { kind: "spatter", count: 40, medianMm: 0.8, spreadMm: 7, seed: mixSeed(seed, 31) },
    ],
    bench: "steel-table",
    lighting: "raking",
    scaleObject: { kind: "disc", side: "left", placement: { xMm: -18, vMm: -19, turnDeg: 0 }, sizeMm: 20 },
    pose: poseOf({
      target: [-9, -6],
      fieldWidthMm: 66,
      distanceMm: 150,
      tiltDeg: 12,
      azimuthDeg: 30,
      rollDeg: -3,
    }),
  });
