import { teeProfile } from "../geometry/profile";
import { mixSeed } from "../noise/random";
import { beadOf, gasShielded, poseOf, ripplesOf, sceneOf, setupOf, type Scenario } from "./parts";

/** A fillet that sagged onto the lower plate: one leg far longer, convex, more metal than asked for. */
export const teeUnevenLegs: Scenario = (seed) =>
  sceneOf(seed, {
    title: "Sagged T-joint fillet with uneven legs, oversized on the lower plate",
    setup: setupOf({
      ...gasShielded,
      joint: "tee",
      position: "horizontal",
      thicknessMm: 10,
      travelSpeedMmPerMin: 250,
      targetLegMm: 6,
      weldLengthMm: 92,
    }),
    profile: teeProfile(),
    thicknessMm: 10,
    area: { x0: -68, x1: 66, y0: -40, y1: 34 },
    plate: { finish: "mill-scale", seed: mixSeed(seed, 20), heatBandMm: 6, rust: 0.15, groundStripMm: 0 },
    beads: [
      beadOf({
        startMm: -47,
        endMm: 45,
        leftMm: -7.4,
        rightMm: 3.9,
        crownMm: 1.7,
        capPower: 0.75,
        ripple: { ...ripplesOf.gasShielded, pitchMm: 1.2, heightMm: 0.12 },
        raggedMm: 0.2,
        craterDepthMm: 1,
        seed: mixSeed(seed, 1),
      }),
    ],
    faults: [
      { kind: "bead-shape", id: "uneven-legs" },
      { kind: "bead-shape", id: "oversized", targetLegMm: 6 },
      {
        kind: "overlap",
        side: "left",
        fromMm: -20,
        toMm: 18,
        reachMm: 1.2,
        heightMm: 1.1,
        seed: mixSeed(seed, 2),
      },
      { kind: "spatter", count: 30, medianMm: 0.8, spreadMm: 8, seed: mixSeed(seed, 31) },
    ],
    bench: "steel-table",
    lighting: "window",
    scaleObject: { kind: "rule", side: "left", placement: { xMm: 0, vMm: -34, turnDeg: -1 }, sizeMm: 100 },
    pose: poseOf({ target: [0, -8], fieldWidthMm: 134, tiltDeg: 9, azimuthDeg: -20, rollDeg: 1.5 }),
  });
