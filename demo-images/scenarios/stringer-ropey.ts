import { capSize, depositAreaMm2 } from "../geometry/bead-size";
import { flatProfile } from "../geometry/profile";
import { mixSeed } from "../noise/random";
import { beadOf, poseOf, ripplesOf, setupOf, type Scenario } from "./parts";

/** A cold, high, narrow stringer on mill scale: too little voltage for the wire. */
export const stringerRopey: Scenario = (seed) => {
  const setup = setupOf({
    process: "FCAW-S",
    electrodeClass: "E71T-11",
    electrodeDiameterMm: 0.9,
    polarity: "DCEN",
    gas: "none",
    wireFeedMPerMin: 3.8,
    volts: 13.5,
    travelSpeedMmPerMin: 190,
    weldLengthMm: 80,
    joint: "bead-on-plate",
    position: "flat",
    travelDirection: "drag",
    ctwdMm: 20,
    thicknessMm: 6,
    baseMetal: "carbon-steel",
    surface: "mill-scale",
  });
  const { widthMm, heightMm } = capSize(depositAreaMm2(setup) ?? 8, 0.52);
  return {
    title: "Ropey self-shielded stringer on mill scale",
    setup,
    profile: flatProfile(),
    area: { x0: -60, x1: 62, y0: -30, y1: 40 },
    thicknessMm: 6,
    plate: { finish: "mill-scale", seed: mixSeed(seed, 20), heatBandMm: 4, rust: 0.1, groundStripMm: 0 },
    weld: { seed: mixSeed(seed, 21), oxide: 0.6, tint: 0 },
    beads: [
      beadOf({
        startMm: -40,
        endMm: 40,
        leftMm: -widthMm / 2,
        rightMm: widthMm / 2,
        crownMm: heightMm,
        capPower: 0.55,
        raggedMm: 0.28,
        wanderMm: 0.7,
        unevenWidth: 0.1,
        startLump: 0.6,
        ripple: { ...ripplesOf.selfShielded, pitchMm: 1.7, heightMm: 0.24, pitchSpread: 0.38 },
        roughMm: 0.03,
        seed: mixSeed(seed, 1),
      }),
    ],
    faults: [
      { kind: "bead-shape", id: "convex-bead" },
      { kind: "soot", soot: 0.55, fume: 0.5, reachMm: 8, seed: mixSeed(seed, 30) },
      { kind: "spatter", count: 60, medianMm: 0.8, spreadMm: 8, seed: mixSeed(seed, 31) },
    ],
    bench: "concrete",
    lighting: "overhead",
    lightTurnDeg: 0,
    scaleObject: { kind: "rule", side: "right", placement: { xMm: -2, vMm: 26, turnDeg: -1.2 }, sizeMm: 100 },
    pose: poseOf({ target: [0, 4], fieldWidthMm: 130, rollDeg: -2 }),
    exposureEv: 0,
  };
};
