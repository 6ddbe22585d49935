import { teeProfile } from "../geometry/profile";
import { mixSeed } from "../noise/random";
import { beadOf, gasShielded, poseOf, ripplesOf, sceneOf, setupOf, type Scenario } from "./parts";

/** One heavy pass on an upright plate: the metal sank in tongues and stands on the lower plate in a steep step. */
export const teeSagging: Scenario = (seed) =>
  sceneOf(seed, {
    title: "Horizontal fillet that sagged, with a steep lower toe",
    setup: setupOf({
      ...gasShielded,
      joint: "tee",
      position: "horizontal",
      thicknessMm: 12,
      wireFeedMPerMin: 10,
      volts: 28,
      travelSpeedMmPerMin: 240,
      weldLengthMm: 92,
    }),
    profile: teeProfile(),
    thicknessMm: 12,
    area: { x0: -68, x1: 66, y0: -40, y1: 34 },
    plate: { finish: "mill-scale", seed: mixSeed(seed, 20), heatBandMm: 6.5, rust: 0.1, groundStripMm: 0 },
    weld: { seed: mixSeed(seed, 21), oxide: 0.35, tint: 0 },
    beads: [
      beadOf({
        startMm: -47,
        endMm: 45,
        leftMm: -7,
        rightMm: 5.6,
        crownMm: 1,
        capPower: 0.85,
        ripple: { ...ripplesOf.gasShielded, pitchMm: 1.15, heightMm: 0.11 },
        raggedMm: 0.2,
        craterDepthMm: 0.9,
        seed: mixSeed(seed, 1),
      }),
    ],
    faults: [
      { kind: "sagging", fromMm: -36, toMm: 34, bellyMm: 2.5, seed: mixSeed(seed, 2) },
      { kind: "steep-toe", side: "left", fromMm: -34, toMm: 32, heightMm: 1.5, seed: mixSeed(seed, 3) },
      { kind: "spatter", count: 24, medianMm: 0.8, spreadMm: 8, seed: mixSeed(seed, 31) },
    ],
    bench: "steel-table",
    lighting: "raking",
    scaleObject: { kind: "rule", side: "left", placement: { xMm: 0, vMm: -34, turnDeg: -1 }, sizeMm: 100 },
    pose: poseOf({ target: [0, -7], fieldWidthMm: 136, tiltDeg: 9, azimuthDeg: -20, rollDeg: 1.2 }),
  });
