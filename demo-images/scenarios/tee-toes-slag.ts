import { teeProfile } from "../geometry/profile";
import { mixSeed } from "../noise/random";
import { teeToes } from "./fillet";
import { beadOf, gasShielded, poseOf, ripplesOf, sceneOf, setupOf, type Scenario } from "./parts";

/** A fillet whose toes are both poor: slag held in them, bites of undercut at the lower one, and one pore on the face. */
export const teeToesSlag: Scenario = (seed) => {
  const setup = setupOf({
    ...gasShielded,
    joint: "tee",
    position: "flat",
    thicknessMm: 10,
    travelSpeedMmPerMin: 330,
    weldLengthMm: 92,
  });
  const { leftMm, rightMm, crownMm } = teeToes(setup, 0.12);
  return sceneOf(seed, {
    title: "T-joint fillet with slag held at both toes, bites of undercut at the lower and a single pore",
    setup,
    profile: teeProfile(),
    thicknessMm: 10,
    area: { x0: -68, x1: 66, y0: -40, y1: 36 },
    plate: { finish: "brushed", seed: mixSeed(seed, 20), heatBandMm: 5, rust: 0.08, groundStripMm: 0 },
    weld: { seed: mixSeed(seed, 21), oxide: 0.35, tint: 0 },
    beads: [
      beadOf({
        startMm: -47,
        endMm: 45,
        leftMm,
        rightMm,
        crownMm,
        capPower: 0.8,
        ripple: { ...ripplesOf.gasShielded, pitchMm: 1, heightMm: 0.1 },
        raggedMm: 0.22,
        craterDepthMm: 0.8,
        seed: mixSeed(seed, 1),
      }),
    ],
    faults: [
      {
        kind: "undercut",
        side: "left",
        fromMm: -8,
        toMm: 36,
        depthMm: 0.8,
        widthMm: 1.7,
        broken: 0.95,
        seed: mixSeed(seed, 2),
      },
      {
        kind: "slag-line",
        along: { toe: "right", fromMm: -30, toMm: 4 },
        widthMm: 1.3,
        seed: mixSeed(seed, 3),
      },
      {
        kind: "slag-line",
        along: { toe: "left", fromMm: -38, toMm: -14 },
        widthMm: 1.2,
        seed: mixSeed(seed, 4),
      },
      {
        kind: "porosity",
        count: 1,
        medianMm: 1.4,
        layout: "single",
        fromMm: 10,
        toMm: 32,
        seed: mixSeed(seed, 5),
      },
      { kind: "spatter", count: 40, medianMm: 0.85, spreadMm: 8, seed: mixSeed(seed, 31) },
    ],
    bench: "steel-table",
    lighting: "overhead",
    scaleObject: { kind: "rule", side: "left", placement: { xMm: 0, vMm: -32, turnDeg: 0.9 }, sizeMm: 100 },
    pose: poseOf({ target: [0, -7], fieldWidthMm: 134, tiltDeg: 8, azimuthDeg: -18, rollDeg: 1.2 }),
  });
};
