import { capSize, depositAreaMm2 } from "../geometry/bead-size";
import { flatProfile } from "../geometry/profile";
import { mixSeed } from "../noise/random";
import { beadOf, gasShielded, poseOf, ripplesOf, sceneOf, setupOf, type Scenario } from "./parts";

/** Gas-shielded bead with worm tracks under the slag and some wormholes: damp wire or a short stick-out. */
export const gasMarksWormholes: Scenario = (seed) => {
  const setup = setupOf({
    ...gasShielded,
    joint: "bead-on-plate",
    thicknessMm: 10,
    wireFeedMPerMin: 9,
    ctwdMm: 11,
    weldLengthMm: 84,
  });
  const { widthMm, heightMm } = capSize(depositAreaMm2(setup) ?? 20, 0.2);
  return sceneOf(seed, {
    title: "Gas-shielded bead with gas marks under the slag and wormholes",
    setup,
    profile: flatProfile(),
    thicknessMm: 10,
    area: { x0: -67, x1: 65, y0: -38, y1: 30 },
    plate: { finish: "mill-scale", seed: mixSeed(seed, 20), heatBandMm: 6, rust: 0.05, groundStripMm: 0 },
    weld: { seed: mixSeed(seed, 21), oxide: 0.4, tint: 0 },
    beads: [
      beadOf({
        startMm: -42,
        endMm: 42,
        leftMm: -widthMm / 2,
        rightMm: widthMm / 2,
        crownMm: heightMm,
        ripple: ripplesOf.gasShielded,
        craterDepthMm: 0.8,
        seed: mixSeed(seed, 1),
      }),
    ],
    faults: [
      { kind: "gas-marks", count: 22, fromMm: -32, toMm: 20, seed: mixSeed(seed, 2) },
      { kind: "wormholes", count: 9, fromMm: 2, toMm: 30, seed: mixSeed(seed, 3) },
      { kind: "stuck-slag", x: -30, y: 1.2, radiusMm: 1.8, heightMm: 0.3, seed: mixSeed(seed, 4) },
      { kind: "spatter", count: 22, medianMm: 0.8, spreadMm: 8, seed: mixSeed(seed, 31) },
    ],
    bench: "paper",
    lighting: "window",
    scaleObject: { kind: "strip", side: "left", placement: { xMm: 0, vMm: -24, turnDeg: 1.4 }, sizeMm: 0 },
    pose: poseOf({ target: [0, -7], fieldWidthMm: 138, tiltDeg: 12, azimuthDeg: -20, rollDeg: -1 }),
  });
};
