import { lapProfile } from "../geometry/profile";
import { mixSeed } from "../noise/random";
import { beadOf, poseOf, ripplesOf, sceneOf, selfShielded, setupOf, type Scenario } from "./parts";

/** Lap weld on 2 mm sheet, run too cold: metal rolled over the lower sheet without tying in. */
export const lapColdLap: Scenario = (seed) =>
  sceneOf(seed, {
    title: "Lap weld on 2 mm sheet with cold lap at the lower toe",
    setup: setupOf({
      ...selfShielded,
      joint: "lap",
      position: "horizontal",
      thicknessMm: 2,
      volts: 14,
      wireFeedMPerMin: 3.4,
      weldLengthMm: 82,
    }),
    profile: lapProfile(2),
    thicknessMm: 2,
    area: { x0: -67, x1: 66, y0: -38, y1: 34 },
    plate: { finish: "brushed", seed: mixSeed(seed, 20), heatBandMm: 4.5, rust: 0.05, groundStripMm: 0 },
    weld: { seed: mixSeed(seed, 21), oxide: 0.45, tint: 0 },
    beads: [
      beadOf({
        startMm: -42,
        endMm: 40,
        leftMm: -3.1,
        rightMm: 1.1,
        crownMm: 1.3,
        capPower: 0.75,
        raggedMm: 0.2,
        wanderMm: 0.35,
        unevenWidth: 0.07,
        startLump: 0.45,
        ripple: { ...ripplesOf.selfShielded, heightMm: 0.17, pitchMm: 1.5 },
        seed: mixSeed(seed, 1),
      }),
    ],
    faults: [
      {
        kind: "overlap",
        side: "left",
        fromMm: -28,
        toMm: 12,
        reachMm: 1.5,
        heightMm: 1.5,
        seed: mixSeed(seed, 2),
      },
      { kind: "soot", soot: 0.35, fume: 0.45, reachMm: 9, seed: mixSeed(seed, 30) },
      { kind: "spatter", count: 26, medianMm: 0.6, spreadMm: 8, seed: mixSeed(seed, 31) },
    ],
    bench: "wood",
    lighting: "window",
    scaleObject: { kind: "strip", side: "left", placement: { xMm: 0, vMm: -22, turnDeg: -1.5 }, sizeMm: 0 },
    pose: poseOf({ target: [0, -5], fieldWidthMm: 138, tiltDeg: 18, azimuthDeg: -6, rollDeg: 1 }),
  });
