import { flatProfile } from "../geometry/profile";
import { mixSeed } from "../noise/random";
import { beadOf, poseOf, sceneOf, selfShielded, setupOf, type Scenario } from "./parts";

/** The arc went out halfway and was struck again on the cold crater: a lump, a cold lap beside it and a nest of pores. */
export const restartCluster: Scenario = (seed) =>
  sceneOf(seed, {
    title: "Bead with a lumpy restart, cold lap beside it and a cluster of pores",
    setup: setupOf({
      ...selfShielded,
      joint: "bead-on-plate",
      thicknessMm: 8,
      travelSpeedMmPerMin: 180,
      weldLengthMm: 86,
    }),
    profile: flatProfile(),
    thicknessMm: 8,
    area: { x0: -66, x1: 64, y0: -36, y1: 40 },
    plate: { finish: "mill-scale", seed: mixSeed(seed, 20), heatBandMm: 4.5, rust: 0.05, groundStripMm: 8 },
    weld: { seed: mixSeed(seed, 21), oxide: 0.45, tint: 0 },
    beads: [
      beadOf({
        startMm: -43,
        endMm: 43,
        leftMm: -4,
        rightMm: 4,
        crownMm: 1.9,
        capPower: 0.9,
        raggedMm: 0.2,
        restart: { atMm: -4, lumpMm: 1.15, dipMm: 0.75 },
        craterDepthMm: 0.6,
        seed: mixSeed(seed, 1),
      }),
    ],
    faults: [
      { kind: "poor-start", at: "restart", lengthMm: 10 },
      {
        kind: "overlap",
        side: "left",
        fromMm: -8,
        toMm: 6,
        reachMm: 1,
        heightMm: 0.9,
        seed: mixSeed(seed, 2),
      },
      {
        kind: "porosity",
        count: 8,
        medianMm: 0.95,
        layout: "clustered",
        fromMm: 8,
        toMm: 20,
        seed: mixSeed(seed, 3),
      },
      { kind: "clamp-mark", xMm: 36, yMm: 25, diameterMm: 18, seed: mixSeed(seed, 4) },
      { kind: "clamp-mark", xMm: -45, yMm: 23, diameterMm: 18, seed: mixSeed(seed, 5) },
      { kind: "soot", soot: 0.3, fume: 0.4, reachMm: 8, seed: mixSeed(seed, 30) },
      { kind: "spatter", count: 26, medianMm: 0.8, spreadMm: 8, seed: mixSeed(seed, 31) },
    ],
    bench: "wood",
    lighting: "window",
    scaleObject: { kind: "rule", side: "left", placement: { xMm: 0, vMm: -23, turnDeg: -1.1 }, sizeMm: 100 },
    pose: poseOf({ target: [0, 0], fieldWidthMm: 134, tiltDeg: 15, azimuthDeg: 12, rollDeg: -1.5 }),
  });
