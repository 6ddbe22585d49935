import { flatProfile } from "../geometry/profile";
import { mixSeed } from "../noise/random";
import { beadOf, poseOf, sceneOf, selfShielded, setupOf, type Scenario } from "./parts";

/** Stubbed start with a whisker of wire, a lump, a stray arc on the plate and toes that wander. */
export const poorStartArcStrike: Scenario = (seed) =>
  sceneOf(seed, {
    title: "Wandering bead with a poor start, a wire stub and an arc strike",
    setup: setupOf({
      ...selfShielded,
      joint: "bead-on-plate",
      thicknessMm: 8,
      volts: 14.5,
      ctwdMm: 22,
      weldLengthMm: 84,
    }),
    profile: flatProfile(),
    thicknessMm: 8,
    beads: [
      beadOf({
        startMm: -42,
        endMm: 42,
        leftMm: -2.9,
        rightMm: 2.9,
        crownMm: 2,
        capPower: 0.8,
        startLump: 0.75,
        wanderMm: 2.6,
        wanderLengthMm: 19,
        unevenWidth: 0.12,
        raggedMm: 0.3,
        roughMm: 0.025,
        seed: mixSeed(seed, 1),
      }),
    ],
    faults: [
      { kind: "poor-start", at: "start", lengthMm: 9 },
      { kind: "bead-shape", id: "wandering" },
      {
        kind: "porosity",
        count: 2,
        medianMm: 0.9,
        layout: "scattered",
        fromMm: -38,
        toMm: -28,
        seed: mixSeed(seed, 6),
      },
      { kind: "soot", soot: 0.4, fume: 0.45, reachMm: 9, seed: mixSeed(seed, 30) },
      { kind: "wire-stub", xMm: -36, lengthMm: 9, diameterMm: 0.9, headingDeg: 62, seed: mixSeed(seed, 2) },
      { kind: "arc-strike", xMm: -20, yMm: 15, diameterMm: 3.6, seed: mixSeed(seed, 3) },
      { kind: "arc-strike", xMm: -13.5, yMm: 17.5, diameterMm: 2.2, seed: mixSeed(seed, 4) },
      { kind: "spatter", count: 40, medianMm: 0.7, spreadMm: 8, seed: mixSeed(seed, 31) },
    ],
    bench: "wood",
    lighting: "overhead",
    scaleObject: { kind: "rule", side: "left", placement: { xMm: 0, vMm: -22, turnDeg: 0.6 }, sizeMm: 100 },
    pose: poseOf({ target: [0, -3], fieldWidthMm: 126, tiltDeg: 15, azimuthDeg: -14, rollDeg: -1 }),
  });
