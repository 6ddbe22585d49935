import { flatProfile } from "../geometry/profile";
import { mixSeed } from "../noise/random";
import { beadOf, gasShielded, poseOf, ripplesOf, sceneOf, setupOf, type Scenario } from "./parts";

/** Wire that came in fits: a lumpy face, and at its end the wire burnt back to the tip and left copper behind. */
export const stringerBurnback: Scenario = (seed) =>
  sceneOf(seed, {
    title: "Bead with an irregular surface that ends in a burnback, copper in its face",
    setup: setupOf({
      ...gasShielded,
      process: "GMAW",
      electrodeClass: "ER70S-6",
      electrodeDiameterMm: 0.9,
      gas: "75Ar-25CO2",
      wireFeedMPerMin: 6,
      volts: 20,
      amps: null,
      ctwdMm: 7,
      travelDirection: "push",
      joint: "bead-on-plate",
      thicknessMm: 8,
      weldLengthMm: 72,
    }),
    profile: flatProfile(),
    thicknessMm: 8,
    area: { x0: -62, x1: 62, y0: -36, y1: 32 },
    plate: { finish: "ground", seed: mixSeed(seed, 20), heatBandMm: 4.5, rust: 0.03, groundStripMm: 0 },
    weld: { seed: mixSeed(seed, 21), oxide: 0.35, tint: 0 },
    beads: [
      beadOf({
        startMm: -42,
        endMm: 30,
        leftMm: -4,
        rightMm: 4,
        crownMm: 1.7,
        capPower: 0.95,
        startLump: 0.35,
        ripple: { ...ripplesOf.gasShielded, pitchMm: 1.05, heightMm: 0.1 },
        craterDepthMm: 0.5,
        roughMm: 0.02,
        seed: mixSeed(seed, 1),
      }),
    ],
    faults: [
      { kind: "irregular-surface", fromMm: -36, toMm: 22, heightMm: 1.7, seed: mixSeed(seed, 2) },
      {
        kind: "inclusion",
        metal: "copper",
        xMm: 15.5,
        asideMm: -0.6,
        diameterMm: 2.6,
        seed: mixSeed(seed, 3),
      },
      { kind: "burnback", wireMm: 0.9, ballMm: 3, stubMm: 7.5, headingDeg: 28, seed: mixSeed(seed, 4) },
      { kind: "spatter", count: 34, medianMm: 0.8, spreadMm: 8, seed: mixSeed(seed, 31) },
    ],
    bench: "wood",
    lighting: "raking",
    lightTurnDeg: 55,
    scaleObject: { kind: "rule", side: "left", placement: { xMm: 0, vMm: -23, turnDeg: 0.7 }, sizeMm: 100 },
    pose: poseOf({ target: [0, -5], fieldWidthMm: 128, tiltDeg: 12, azimuthDeg: -16, rollDeg: -1 }),
  });
