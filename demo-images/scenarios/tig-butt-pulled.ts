import { grooveProfile } from "../geometry/profile";
import { mixSeed } from "../noise/random";
import { beadOf, poseOf, sceneOf, setupOf, type Scenario } from "./parts";

/** Thin stainless welded from one side: the plate pulled up out of line, and the tungsten was dipped twice. */
export const tigButtPulled: Scenario = (seed) =>
  sceneOf(seed, {
    title: "Stainless butt weld pulled up at an angle, tungsten in its face",
    setup: setupOf({
      process: "GTAW",
      polarity: "DCEN",
      gas: "Ar",
      gasFlowLPerMin: 9,
      amps: 95,
      electrodeDiameterMm: 2.4,
      travelSpeedMmPerMin: 110,
      position: "flat",
      baseMetal: "stainless",
      joint: "butt-open",
      thicknessMm: 3,
      weldLengthMm: 84,
    }),
    profile: grooveProfile({ thicknessMm: 3, rootGapMm: 1, includedAngleDeg: 0, tiltDeg: 14 }),
    thicknessMm: 3,
    area: { x0: -56, x1: 56, y0: -36, y1: 34 },
    plate: { finish: "stainless", seed: mixSeed(seed, 20), heatBandMm: 5, rust: 0, groundStripMm: 0 },
    weld: { seed: mixSeed(seed, 21), oxide: 0.05, tint: 0.35 },
    beads: [
      beadOf({
        startMm: -44,
        endMm: 42,
        leftMm: -3,
        rightMm: 3,
        crownMm: 0.7,
        capPower: 1.2,
        startLump: 0.1,
        ripple: {
          pitchMm: 1.5,
          pitchSpread: 0.12,
          heightMm: 0.1,
          lag: 0.9,
          finePitchMm: 0.4,
          fineHeightMm: 0.008,
        },
        raggedMm: 0.06,
        wanderMm: 0.15,
        craterDepthMm: 0.3,
        roughMm: 0.005,
        seed: mixSeed(seed, 1),
      }),
    ],
    faults: [
      { kind: "bead-shape", id: "angular-misalignment" },
      {
        kind: "inclusion",
        metal: "tungsten",
        xMm: -18,
        asideMm: 0.5,
        diameterMm: 1.3,
        seed: mixSeed(seed, 2),
      },
      {
        kind: "inclusion",
        metal: "tungsten",
        xMm: 9,
        asideMm: -0.7,
        diameterMm: 0.9,
        seed: mixSeed(seed, 3),
      },
    ],
    bench: "rubber-mat",
    lighting: "window",
    lightTurnDeg: 15,
    scaleObject: { kind: "rule", side: "left", placement: { xMm: 0, vMm: -20, turnDeg: 0.8 }, sizeMm: 75 },
    pose: poseOf({
      target: [0, -2],
      fieldWidthMm: 128,
      tiltDeg: 37,
      azimuthDeg: -78,
      rollDeg: -86,
      distanceMm: 240,
    }),
  });
