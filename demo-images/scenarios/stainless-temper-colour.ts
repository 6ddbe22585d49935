import { flatProfile } from "../geometry/profile";
import { mixSeed } from "../noise/random";
import { beadOf, gasShielded, poseOf, ripplesOf, sceneOf, setupOf, type Scenario } from "./parts";

/** Stainless bead with the whole scale of temper colours beside it. */
export const stainlessTemperColour: Scenario = (seed) =>
  sceneOf(seed, {
    title: "Stainless bead with heavy temper colour",
    setup: setupOf({
      ...gasShielded,
      electrodeClass: "E308LT1-1",
      baseMetal: "stainless",
      gas: "75Ar-25CO2",
      joint: "bead-on-plate",
      thicknessMm: 4,
      wireFeedMPerMin: 7.5,
      travelSpeedMmPerMin: 380,
      weldLengthMm: 86,
    }),
    profile: flatProfile(),
    thicknessMm: 4,
    area: { x0: -62, x1: 62, y0: -34, y1: 40 },
    plate: { finish: "stainless", seed: mixSeed(seed, 20), heatBandMm: 9.5, rust: 0, groundStripMm: 0 },
    weld: { seed: mixSeed(seed, 21), oxide: 0.2, tint: 0.85 },
    beads: [
      beadOf({
        startMm: -44,
        endMm: 42,
        leftMm: -4.4,
        rightMm: 4.4,
        crownMm: 1.8,
        ripple: ripplesOf.gasShielded,
        seed: mixSeed(seed, 1),
      }),
    ],
    faults: [
      { kind: "temper-colour" },
      { kind: "spatter", count: 16, medianMm: 0.6, spreadMm: 8, seed: mixSeed(seed, 31) },
    ],
    bench: "rubber-mat",
    lighting: "window",
    lightTurnDeg: 25,
    scaleObject: { kind: "disc", side: "right", placement: { xMm: 34, vMm: 25, turnDeg: 0 }, sizeMm: 25 },
    pose: poseOf({ target: [2, 3], fieldWidthMm: 121, tiltDeg: 15, azimuthDeg: 15, rollDeg: 2 }),
  });
