import { flatProfile } from "../geometry/profile";
import { mixSeed } from "../noise/random";
import { beadOf, gasShielded, poseOf, ripplesOf, sceneOf, setupOf, type Scenario } from "./parts";

/** A hard, restrained bead that cracked along its middle and across. */
export const crackAlongAcross: Scenario = (seed) =>
  sceneOf(seed, {
    title: "Bead with a crack along it and one across",
    setup: setupOf({
      ...gasShielded,
      joint: "bead-on-plate",
      thicknessMm: 16,
      baseMetal: "low-alloy",
      weldLengthMm: 84,
    }),
    profile: flatProfile(),
    thicknessMm: 16,
    area: { x0: -67, x1: 66, y0: -39, y1: 36 },
    plate: { finish: "ground", seed: mixSeed(seed, 20), heatBandMm: 5, rust: 0.04, groundStripMm: 0 },
    beads: [
      beadOf({
        startMm: -42,
        endMm: 42,
        leftMm: -5,
        rightMm: 5,
        crownMm: 2.4,
        capPower: 0.9,
        ripple: ripplesOf.gasShielded,
        seed: mixSeed(seed, 1),
      }),
    ],
    faults: [
      { kind: "longitudinal-crack", fromMm: -24, toMm: 12, widthMm: 0.14, seed: mixSeed(seed, 2) },
      { kind: "transverse-crack", xMm: 26, widthMm: 0.14, seed: mixSeed(seed, 3) },
      { kind: "spatter", count: 20, medianMm: 0.7, spreadMm: 7, seed: mixSeed(seed, 31) },
    ],
    bench: "concrete",
    lighting: "raking",
    scaleObject: { kind: "strip", side: "left", placement: { xMm: 0, vMm: -22, turnDeg: -1 }, sizeMm: 0 },
    pose: poseOf({ target: [0, -7], fieldWidthMm: 138, tiltDeg: 12, azimuthDeg: 25, rollDeg: 1.5 }),
  });
