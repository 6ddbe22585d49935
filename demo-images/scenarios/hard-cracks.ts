import { flatProfile } from "../geometry/profile";
import { mixSeed } from "../noise/random";
import { beadOf, gasShielded, poseOf, ripplesOf, sceneOf, setupOf, type Scenario } from "./parts";

/** A hard, restrained bead with a forked crack, a star of cracks and a patch of separate ones. */
export const hardCracks: Scenario = (seed) =>
  sceneOf(seed, {
    title: "Bead with a branching crack, radiating cracks and a group of cracks",
    setup: setupOf({
      ...gasShielded,
      joint: "bead-on-plate",
      thicknessMm: 20,
      baseMetal: "low-alloy",
      weldLengthMm: 72,
    }),
    profile: flatProfile(),
    thicknessMm: 20,
    area: { x0: -52, x1: 52, y0: -32, y1: 30 },
    plate: { finish: "brushed", seed: mixSeed(seed, 20), heatBandMm: 5, rust: 0.03, groundStripMm: 0 },
    weld: { seed: mixSeed(seed, 21), oxide: 0.3, tint: 0 },
    beads: [
      beadOf({
        startMm: -36,
        endMm: 36,
        leftMm: -6.4,
        rightMm: 6.4,
        crownMm: 2.2,
        capPower: 1,
        ripple: ripplesOf.gasShielded,
        seed: mixSeed(seed, 1),
      }),
    ],
    faults: [
      {
        kind: "branching-crack",
        fromMm: -30,
        lengthMm: 20,
        branches: 3,
        widthMm: 0.16,
        seed: mixSeed(seed, 2),
      },
      { kind: "radiating-crack", xMm: 2, arms: 5, lengthMm: 4.4, widthMm: 0.16, seed: mixSeed(seed, 3) },
      {
        kind: "crack-group",
        xMm: 20,
        count: 6,
        radiusMm: 4,
        lengthMm: 2.7,
        widthMm: 0.16,
        seed: mixSeed(seed, 4),
      },
      { kind: "spatter", count: 12, medianMm: 0.7, spreadMm: 7, seed: mixSeed(seed, 31) },
    ],
    bench: "concrete",
    lighting: "overhead",
    scaleObject: { kind: "disc", side: "left", placement: { xMm: -24, vMm: -20, turnDeg: 0 }, sizeMm: 20 },
    pose: poseOf({
      target: [0, -4],
      fieldWidthMm: 88,
      distanceMm: 170,
      tiltDeg: 11,
      azimuthDeg: 20,
      rollDeg: -2,
    }),
  });
