import { lapProfile } from "../geometry/profile";
import { mixSeed } from "../noise/random";
import { beadOf, poseOf, ripplesOf, sceneOf, setupOf, type Scenario } from "./parts";

/** Self-shielded stainless lap with a field of spatter. */
export const stainlessLapSpatter: Scenario = (seed) =>
  sceneOf(seed, {
    title: "Self-shielded stainless lap weld with heavy spatter",
    setup: setupOf({
      process: "FCAW-S",
      electrodeClass: "E308LT0-3",
      electrodeDiameterMm: 1.2,
      polarity: "DCEP",
      gas: "none",
      baseMetal: "stainless",
      joint: "lap",
      position: "flat",
      thicknessMm: 3,
      wireFeedMPerMin: 6,
      volts: 27,
      travelSpeedMmPerMin: 380,
      weldLengthMm: 86,
    }),
    profile: lapProfile(3),
    thicknessMm: 3,
    area: { x0: -64, x1: 64, y0: -70, y1: 30 },
    plate: { finish: "stainless", seed: mixSeed(seed, 20), heatBandMm: 7, rust: 0, groundStripMm: 0 },
    weld: { seed: mixSeed(seed, 21), oxide: 0.45, tint: 0.6 },
    beads: [
      beadOf({
        startMm: -45,
        endMm: 41,
        leftMm: -4.3,
        rightMm: 1.2,
        crownMm: 1.1,
        raggedMm: 0.22,
        unevenWidth: 0.06,
        ripple: { ...ripplesOf.selfShielded, pitchMm: 1.35 },
        seed: mixSeed(seed, 1),
      }),
    ],
    faults: [
      { kind: "soot", soot: 0.4, fume: 0.45, reachMm: 10, seed: mixSeed(seed, 30) },
      { kind: "spatter", count: 190, medianMm: 0.75, spreadMm: 10, seed: mixSeed(seed, 31) },
    ],
    bench: "concrete",
    lighting: "overhead",
    scaleObject: { kind: "card", side: "left", placement: { xMm: -8, vMm: -38, turnDeg: 3 }, sizeMm: 0 },
    pose: poseOf({ target: [0, -20], fieldWidthMm: 140, tiltDeg: 20, azimuthDeg: 4, rollDeg: -2 }),
  });
