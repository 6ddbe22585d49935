import { grooveProfile } from "../geometry/profile";
import { mixSeed } from "../noise/random";
import { beadOf, poseOf, ripplesOf, sceneOf, selfShielded, setupOf, type Scenario } from "./parts";

/** Butt in thin sheet, run too hot over a gap: the pool fell through twice. */
export const burnThroughSheet: Scenario = (seed) =>
  sceneOf(seed, {
    title: "Butt weld in 1.6 mm sheet with burn-through",
    setup: setupOf({
      ...selfShielded,
      joint: "butt-open",
      thicknessMm: 1.6,
      fitUpGapMm: 1.2,
      volts: 17.5,
      travelSpeedMmPerMin: 260,
      weldLengthMm: 80,
    }),
    profile: grooveProfile({ thicknessMm: 1.6, rootGapMm: 0.7, includedAngleDeg: 0 }),
    thicknessMm: 1.6,
    area: { x0: -62, x1: 60, y0: -32, y1: 38 },
    plate: { finish: "brushed", seed: mixSeed(seed, 20), heatBandMm: 8, rust: 0.05, groundStripMm: 0 },
    weld: { seed: mixSeed(seed, 21), oxide: 0.45, tint: 0 },
    beads: [
      beadOf({
        startMm: -44,
        endMm: 36,
        leftMm: -2.9,
        rightMm: 2.9,
        crownMm: 0.85,
        raggedMm: 0.25,
        wanderMm: 0.5,
        unevenWidth: 0.1,
        ripple: ripplesOf.selfShielded,
        seed: mixSeed(seed, 1),
      }),
    ],
    faults: [
      { kind: "burn-through", xMm: 9, lengthMm: 7.5, widthMm: 4.6, fallMm: 5, seed: mixSeed(seed, 2) },
      { kind: "burn-through", xMm: -19, lengthMm: 3.6, widthMm: 2.8, fallMm: 5, seed: mixSeed(seed, 3) },
      { kind: "soot", soot: 0.35, fume: 0.35, reachMm: 10, seed: mixSeed(seed, 30) },
      { kind: "spatter", count: 34, medianMm: 0.6, spreadMm: 8, seed: mixSeed(seed, 31) },
    ],
    bench: "wood",
    lighting: "flash",
    scaleObject: { kind: "rule", side: "right", placement: { xMm: -1, vMm: 22, turnDeg: -1 }, sizeMm: 100 },
    pose: poseOf({ target: [0, 5], fieldWidthMm: 122, tiltDeg: 17, azimuthDeg: -10, rollDeg: 1.2 }),
  });
