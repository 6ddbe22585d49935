import { teeProfile } from "../geometry/profile";
import { mixSeed } from "../noise/random";
import { teeToes } from "./fillet";
import { beadOf, gasShielded, poseOf, ripplesOf, sceneOf, setupOf, type Scenario } from "./parts";

/** A fillet between thick plates that do not meet, which stops short of the soapstone mark and cracked along its lower toe. */
export const teeToeCrackShort: Scenario = (seed) => {
  const setup = setupOf({
    ...gasShielded,
    joint: "tee",
    position: "horizontal",
    baseMetal: "low-alloy",
    thicknessMm: 25,
    travelSpeedMmPerMin: 300,
    weldLengthMm: 68,
  });
  const { leftMm, rightMm, crownMm } = teeToes(setup, 0.1);
  return sceneOf(seed, {
    title: "T-joint fillet over a wide root gap that ends short of its mark, cracked along the lower toe",
    setup,
    profile: teeProfile(),
    thicknessMm: 25,
    area: { x0: -66, x1: 64, y0: -38, y1: 34 },
    plate: { finish: "mill-scale", seed: mixSeed(seed, 20), heatBandMm: 4.5, rust: 0.05, groundStripMm: 12 },
    weld: { seed: mixSeed(seed, 21), oxide: 0.3, tint: 0 },
    beads: [
      beadOf({
        startMm: -46,
        endMm: 22,
        leftMm,
        rightMm,
        crownMm,
        ripple: ripplesOf.gasShielded,
        craterDepthMm: 0.6,
        seed: mixSeed(seed, 1),
      }),
    ],
    faults: [
      { kind: "wide-root-gap", gapMm: 2.4, seed: mixSeed(seed, 4) },
      { kind: "toe-crack", side: "left", fromMm: -30, toMm: 9, widthMm: 0.24, seed: mixSeed(seed, 2) },
      { kind: "missing-length", fromMm: -46, toMm: 46, seed: mixSeed(seed, 3) },
      { kind: "spatter", count: 14, medianMm: 0.7, spreadMm: 7, seed: mixSeed(seed, 31) },
    ],
    bench: "steel-table",
    lighting: "window",
    scaleObject: { kind: "rule", side: "left", placement: { xMm: 0, vMm: -33, turnDeg: 0.6 }, sizeMm: 100 },
    pose: poseOf({ target: [0, -7], fieldWidthMm: 136, tiltDeg: 9, azimuthDeg: -24, rollDeg: -1 }),
  });
};
