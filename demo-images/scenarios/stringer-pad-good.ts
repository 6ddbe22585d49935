import { capSize, depositAreaMm2 } from "../geometry/bead-size";
import { flatProfile } from "../geometry/profile";
import { mixSeed } from "../noise/random";
import { beadOf, poseOf, setupOf, type Scenario } from "./parts";

/** Three sound self-shielded stringers side by side on 6 mm plate. */
export const stringerPadGood: Scenario = (seed) => {
  const setup = setupOf({
    process: "FCAW-S",
    electrodeClass: "E71T-11",
    electrodeDiameterMm: 0.9,
    polarity: "DCEN",
    gas: "none",
    wireFeedMPerMin: 3.6,
    volts: 16,
    travelSpeedMmPerMin: 200,
    weldLengthMm: 78,
    joint: "stringer-pad",
    position: "flat",
    travelDirection: "drag",
    ctwdMm: 13,
    thicknessMm: 6,
    baseMetal: "carbon-steel",
    surface: "bright",
  });
  const { widthMm, heightMm } = capSize(depositAreaMm2(setup) ?? 8, 0.25);
  const pitch = widthMm * 0.66;
  const beads = [0, 1, 2].map((i) =>
    beadOf({
      startMm: -39 + i * 0.8,
      endMm: 39 - i * 1.4,
      leftMm: -12 + i * pitch - widthMm / 2 + 6,
      rightMm: -12 + i * pitch + widthMm / 2 + 6,
      crownMm: heightMm * (i === 0 ? 1 : 0.8),
      seed: mixSeed(seed, i),
    }),
  );
  return {
    title: "Three sound self-shielded stringers on 6 mm plate",
    setup,
    profile: flatProfile(),
    area: { x0: -63, x1: 61, y0: -38, y1: 36 },
    thicknessMm: 6,
    plate: { finish: "ground", seed: mixSeed(seed, 20), heatBandMm: 5, rust: 0, groundStripMm: 0 },
    weld: { seed: mixSeed(seed, 21), oxide: 0.35, tint: 0 },
    beads,
    faults: [
      { kind: "soot", soot: 0.25, fume: 0.35, reachMm: 9, seed: mixSeed(seed, 30) },
      { kind: "spatter", count: 14, medianMm: 0.6, spreadMm: 7, seed: mixSeed(seed, 31) },
    ],
    bench: "wood",
    lighting: "window",
    lightTurnDeg: 0,
    scaleObject: { kind: "rule", side: "left", placement: { xMm: 1, vMm: -24, turnDeg: 1.4 }, sizeMm: 100 },
    pose: poseOf({ target: [0, -2], fieldWidthMm: 136 }),
    exposureEv: 0,
  };
};
