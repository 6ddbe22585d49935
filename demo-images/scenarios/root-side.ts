import { grooveProfile } from "../geometry/profile";
import { mixSeed } from "../noise/random";
import { beadOf, gasShielded, poseOf, ripplesOf, sceneOf, setupOf, type Scenario } from "./parts";

/** The back of an open butt: metal standing proud on one stretch, root edges never melted on another. */
export const rootSide: Scenario = (seed) => {
  const ripple = { ...ripplesOf.gasShielded, pitchMm: 0.9, heightMm: 0.06 };
  return sceneOf(seed, {
    title: "Root side: excess penetration, then a root that was not reached",
    setup: setupOf({ ...gasShielded, joint: "butt-open", thicknessMm: 6, fitUpGapMm: 2, weldLengthMm: 92 }),
    profile: grooveProfile({ thicknessMm: 1.4, rootGapMm: 1.5, includedAngleDeg: 30 }),
    thicknessMm: 6,
    area: { x0: -62, x1: 62, y0: -34, y1: 38 },
    plate: { finish: "mill-scale", seed: mixSeed(seed, 20), heatBandMm: 6, rust: 0.1, groundStripMm: 9 },
    weld: { seed: mixSeed(seed, 21), oxide: 0.55, tint: 0 },
    beads: [
      beadOf({
        name: "sunk root",
        startMm: -14,
        endMm: 47,
        leftMm: -0.85,
        rightMm: 0.85,
        crownMm: 0.35,
        raggedMm: 0.08,
        ripple,
        craterDepthMm: 0,
        seed: mixSeed(seed, 1),
      }),
      beadOf({
        name: "hollow root",
        startMm: -16,
        endMm: 10,
        leftMm: -1.7,
        rightMm: 1.7,
        crownMm: -0.5,
        startLump: 0,
        ripple,
        craterDepthMm: 0,
        seed: mixSeed(seed, 2),
      }),
      beadOf({
        name: "proud root",
        startMm: -46,
        endMm: -12,
        leftMm: -2.3,
        rightMm: 2.3,
        crownMm: 2.3,
        capPower: 0.6,
        startLump: 0.3,
        unevenWidth: 0.14,
        unevenLengthMm: 5,
        raggedMm: 0.25,
        ripple,
        craterDepthMm: 0,
        seed: mixSeed(seed, 3),
      }),
    ],
    faults: [
      { kind: "bead-shape", id: "excess-penetration" },
      {
        kind: "root-stretch",
        id: "root-concavity",
        fromMm: -11,
        toMm: 9,
        halfWidthMm: 1.8,
      },
      {
        kind: "root-stretch",
        id: "incomplete-penetration",
        fromMm: 11,
        toMm: 46,
        halfWidthMm: 1.1,
      },
      { kind: "spatter", count: 8, medianMm: 0.6, spreadMm: 7, seed: mixSeed(seed, 31) },
    ],
    bench: "steel-table",
    lighting: "window",
    scaleObject: { kind: "rule", side: "right", placement: { xMm: 0, vMm: 19, turnDeg: 1.2 }, sizeMm: 100 },
    pose: poseOf({ target: [0, 4], fieldWidthMm: 124, tiltDeg: 14, azimuthDeg: 8, rollDeg: -1 }),
  });
};
