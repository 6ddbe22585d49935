import { teeProfile } from "../geometry/profile";
import { mixSeed } from "../noise/random";
import { teeToes } from "./fillet";
import { beadOf, poseOf, ripplesOf, sceneOf, selfShielded, setupOf, type Scenario } from "./parts";

/** Self-shielded wire on the wrong polarity: pores over the face, soot and spatter over everything. */
export const teePorositySoot: Scenario = (seed) => {
  const setup = setupOf({
    ...selfShielded,
    polarity: "DCEP",
    joint: "tee",
    position: "horizontal",
    thicknessMm: 6,
    wireFeedMPerMin: 4.6,
    travelSpeedMmPerMin: 170,
    weldLengthMm: 84,
  });
  const { leftMm, rightMm, crownMm } = teeToes(setup, 0.14, 0.06);
  return sceneOf(seed, {
    title: "T-joint with surface porosity and soot after the wrong polarity",
    setup,
    profile: teeProfile(),
    area: { x0: -64, x1: 62, y0: -54, y1: 32 },
    plate: { finish: "mill-scale", seed: mixSeed(seed, 20), heatBandMm: 4, rust: 0.12, groundStripMm: 0 },
    weld: { seed: mixSeed(seed, 21), oxide: 0.7, tint: 0 },
    beads: [
      beadOf({
        startMm: -43,
        endMm: 41,
        leftMm,
        rightMm,
        crownMm,
        capPower: 0.75,
        raggedMm: 0.3,
        unevenWidth: 0.08,
        roughMm: 0.03,
        ripple: { ...ripplesOf.selfShielded, pitchMm: 1.5, heightMm: 0.17 },
        seed: mixSeed(seed, 1),
      }),
    ],
    faults: [
      {
        kind: "porosity",
        count: 26,
        medianMm: 1.1,
        layout: "scattered",
        fromMm: -36,
        toMm: 34,
        seed: mixSeed(seed, 2),
      },
      { kind: "soot", soot: 0.95, fume: 0.5, reachMm: 12, seed: mixSeed(seed, 30) },
      { kind: "spatter", count: 120, medianMm: 0.75, spreadMm: 8, seed: mixSeed(seed, 31) },
    ],
    bench: "concrete",
    lighting: "window",
    scaleObject: { kind: "card", side: "left", placement: { xMm: 5, vMm: -40, turnDeg: -3 }, sizeMm: 0 },
    pose: poseOf({ target: [0, -17], fieldWidthMm: 130, tiltDeg: 6, azimuthDeg: -30, rollDeg: 2 }),
  });
};
