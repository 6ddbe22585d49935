import { teeProfile } from "../geometry/profile";
import { mixSeed } from "../noise/random";
import { teeToes } from "./fillet";
import { beadOf, gasShielded, poseOf, ripplesOf, sceneOf, setupOf, type Scenario } from "./parts";

/** Horizontal fillet run hot and fast: the upright is washed out above the upper toe. */
export const teeUndercut: Scenario = (seed) => {
  const setup = setupOf({
    ...gasShielded,
    joint: "tee",
    position: "horizontal",
    thicknessMm: 8,
    volts: 29,
    travelSpeedMmPerMin: 420,
    weldLengthMm: 96,
  });
  const { leftMm, rightMm, crownMm } = teeToes(setup, 0.03, 0.1);
  return sceneOf(seed, {
    title: "Horizontal T-joint fillet with undercut at the upper toe",
    setup,
    profile: teeProfile(),
    thicknessMm: 8,
    area: { x0: -66, x1: 66, y0: -40, y1: 34 },
    plate: { finish: "mill-scale", seed: mixSeed(seed, 20), heatBandMm: 5.5, rust: 0.08, groundStripMm: 7 },
    weld: { seed: mixSeed(seed, 21), oxide: 0.3, tint: 0 },
    beads: [
      beadOf({
        startMm: -50,
        endMm: 46,
        leftMm,
        rightMm,
        crownMm,
        capPower: 1.1,
        ripple: ripplesOf.gasShielded,
        craterDepthMm: 0.9,
        seed: mixSeed(seed, 1),
      }),
    ],
    faults: [
      {
        kind: "undercut",
        side: "right",
        fromMm: -38,
        toMm: 30,
        depthMm: 1,
        widthMm: 2.2,
        broken: 0.35,
        seed: mixSeed(seed, 2),
      },
      { kind: "spatter", count: 30, medianMm: 0.8, spreadMm: 7, seed: mixSeed(seed, 31) },
    ],
    bench: "steel-table",
    lighting: "overhead",
    exposureEv: -0.3,
    scaleObject: { kind: "rule", side: "left", placement: { xMm: 0, vMm: -32, turnDeg: 0.8 }, sizeMm: 100 },
    pose: poseOf({ target: [0, -6], fieldWidthMm: 134, tiltDeg: 8, azimuthDeg: 20, rollDeg: -1 }),
  });
};
