import { outsideCornerProfile } from "../geometry/profile";
import { mixSeed } from "../noise/random";
import { beadOf, poseOf, sceneOf, selfShielded, setupOf, type Scenario } from "./parts";

/** Outside corner with pores in a line, a pipe in the end crater and a cold toe. */
export const cornerLinearPores: Scenario = (seed) =>
  sceneOf(seed, {
    title: "Outside corner with linear porosity, a crater pipe and a cold toe",
    setup: setupOf({
      ...selfShielded,
      joint: "outside-corner",
      thicknessMm: 5,
      surface: "light-rust",
      weldLengthMm: 84,
    }),
    profile: outsideCornerProfile(),
    thicknessMm: 40,
    area: { x0: -60, x1: 60, y0: -32, y1: 30 },
    plate: { finish: "mill-scale", seed: mixSeed(seed, 20), heatBandMm: 5, rust: 0.4, groundStripMm: 0 },
    beads: [
      beadOf({
        startMm: -44,
        endMm: 40,
        leftMm: -3.4,
        rightMm: 3.4,
        crownMm: 4.6,
        capPower: 0.85,
        raggedMm: 0.22,
        craterDepthMm: 0.9,
        seed: mixSeed(seed, 1),
      }),
    ],
    faults: [
      {
        kind: "porosity",
        count: 11,
        medianMm: 0.95,
        layout: "linear",
        fromMm: -30,
        toMm: 18,
        seed: mixSeed(seed, 2),
      },
      { kind: "crater-pipe", diameterMm: 1.3, seed: mixSeed(seed, 3) },
      { kind: "lack-of-fusion", side: "left", fromMm: -22, toMm: 6, widthMm: 0.3, seed: mixSeed(seed, 4) },
      { kind: "soot", soot: 0.4, fume: 0.4, reachMm: 9, seed: mixSeed(seed, 30) },
      { kind: "spatter", count: 40, medianMm: 0.7, spreadMm: 7, seed: mixSeed(seed, 31) },
    ],
    bench: "wood",
    lighting: "window",
    scaleObject: { kind: "rule", side: "left", placement: { xMm: 0, vMm: -26, turnDeg: 0 }, sizeMm: 100 },
    pose: poseOf({ target: [0, -6], fieldWidthMm: 124, tiltDeg: 26, azimuthDeg: 4, rollDeg: 1 }),
  });
