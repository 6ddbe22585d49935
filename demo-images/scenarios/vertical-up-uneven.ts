import { teeProfile } from "../geometry/profile";
import { mixSeed } from "../noise/random";
import { beadOf, gasShielded, poseOf, ripplesOf, sceneOf, setupOf, type Scenario } from "./parts";

/** Vertical-up fillet woven by an unsteady hand: toes wander, the steps are uneven and sag. */
export const verticalUpUneven: Scenario = (seed) =>
  sceneOf(seed, {
    title: "Vertical-up fillet, wavy and uneven in width",
    setup: setupOf({
      ...gasShielded,
      joint: "tee",
      position: "vertical",
      progression: "up",
      thicknessMm: 10,
      volts: 23.5,
      wireFeedMPerMin: 6,
      travelSpeedMmPerMin: 130,
      weldLengthMm: 92,
    }),
    profile: teeProfile(),
    thicknessMm: 10,
    area: { x0: -62, x1: 60, y0: -42, y1: 36 },
    plate: { finish: "mill-scale", seed: mixSeed(seed, 20), heatBandMm: 7, rust: 0.2, groundStripMm: 11 },
    weld: { seed: mixSeed(seed, 21), oxide: 0.45, tint: 0 },
    beads: [
      beadOf({
        startMm: -46,
        endMm: 46,
        leftMm: -6.4,
        rightMm: 6.2,
        crownMm: 1.5,
        capPower: 0.85,
        raggedMm: 0.34,
        wanderMm: 1.3,
        wanderLengthMm: 24,
        unevenWidth: 0.16,
        unevenLengthMm: 7,
        ripple: ripplesOf.weave,
        roughMm: 0.02,
        craterDepthMm: 1,
        seed: mixSeed(seed, 1),
      }),
    ],
    faults: [
      { kind: "bead-shape", id: "uneven-width" },
      { kind: "spatter", count: 36, medianMm: 0.9, spreadMm: 8, seed: mixSeed(seed, 31) },
    ],
    bench: "rubber-mat",
    lighting: "raking",
    scaleObject: { kind: "rule", side: "left", placement: { xMm: -2, vMm: -33, turnDeg: -0.8 }, sizeMm: 100 },
    pose: poseOf({
      target: [0, -7],
      fieldWidthMm: 104,
      tiltDeg: 7,
      azimuthDeg: 60,
      rollDeg: -88,
      aspect: 3 / 4,
      distanceMm: 250,
    }),
  });
