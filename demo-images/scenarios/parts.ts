import { RunSetupSchema, type RunSetup } from "@/lib/setup";
import type { z } from "zod";
import { mixSeed } from "../noise/random";
import { goodBead, type BeadShape } from "../geometry/bead";
import type { RippleShape } from "../geometry/ripples";
import type { SceneSpec, ScenePose } from "../scene";

export const setupOf = (given: z.input<typeof RunSetupSchema>): RunSetup => RunSetupSchema.parse(given);

/** Ripples by process: a tubular wire under slag freezes in close low crescents, short arc in coarse ones. */
export const ripplesOf = {
  selfShielded: {
    pitchMm: 1.25,
    pitchSpread: 0.3,
    heightMm: 0.13,
    lag: 0.8,
    finePitchMm: 0.42,
    fineHeightMm: 0.02,
  },
  gasShielded: {
    pitchMm: 0.85,
    pitchSpread: 0.24,
    heightMm: 0.07,
    lag: 0.95,
    finePitchMm: 0.33,
    fineHeightMm: 0.013,
  },
  weave: { pitchMm: 2.3, pitchSpread: 0.26, heightMm: 0.3, lag: 0.6, finePitchMm: 0.55, fineHeightMm: 0.05 },
} as const satisfies Record<string, RippleShape>;

export type BeadInput = Pick<BeadShape, "startMm" | "endMm" | "leftMm" | "rightMm" | "crownMm" | "seed"> &
  Partial<BeadShape>;

export const beadOf = (given: BeadInput): BeadShape => ({
  ...goodBead,
  name: "pass",
  ripple: ripplesOf.selfShielded,
  ...given,
});

export const poseOf = (given: Partial<ScenePose>): ScenePose => ({
  target: [0, 0],
  distanceMm: 230,
  fieldWidthMm: 130,
  tiltDeg: 14,
  azimuthDeg: 8,
  rollDeg: 1.5,
  aspect: 4 / 3,
  ...given,
});

export type Scenario = (seed: number) => SceneSpec;

/** A plain scene on which a scenario states only what is its own. */
export function sceneOf(
  seed: number,
  given: Partial<SceneSpec> & Pick<SceneSpec, "title" | "setup" | "profile" | "beads">,
): SceneSpec {
  return {
    area: { x0: -62, x1: 62, y0: -36, y1: 36 },
    thicknessMm: 6,
    plate: { finish: "mill-scale", seed: mixSeed(seed, 20), heatBandMm: 4, rust: 0.06, groundStripMm: 0 },
    weld: { seed: mixSeed(seed, 21), oxide: 0.4, tint: 0 },
    faults: [],
    bench: "steel-table",
    lighting: "overhead",
    lightTurnDeg: 0,
    scaleObject: { kind: "rule", side: "left", placement: { xMm: 0, vMm: -24, turnDeg: 1 }, sizeMm: 100 },
    pose: poseOf({}),
    exposureEv: 0,
    ...given,
  };
}

export const selfShielded = {
  process: "FCAW-S",
  electrodeClass: "E71T-11",
  electrodeDiameterMm: 0.9,
  polarity: "DCEN",
  gas: "none",
  wireFeedMPerMin: 3.8,
  volts: 16,
  ctwdMm: 13,
  travelDirection: "drag",
  travelSpeedMmPerMin: 220,
  position: "flat",
  baseMetal: "carbon-steel",
} as const;

export const gasShielded = {
  process: "FCAW-G",
  electrodeClass: "E71T-1C",
  electrodeDiameterMm: 1.2,
  polarity: "DCEP",
  gas: "CO2",
  gasFlowLPerMin: 18,
  wireFeedMPerMin: 8,
  volts: 27,
  amps: 210,
  ctwdMm: 19,
  travelDirection: "drag",
  travelSpeedMmPerMin: 360,
  position: "flat",
  baseMetal: "carbon-steel",
} as const;
