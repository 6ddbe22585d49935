import type { Outcome } from "@/lib/assess";
import type { Confidence } from "@/lib/base";
import type {
  BaseMetal,
  Gas,
  InputPower,
  Joint,
  Pattern,
  Place,
  Polarity,
  Position,
  Process,
  Progression,
  Stretch,
  Surface,
  Transfer,
} from "@/lib/trade";

/** Words for codes, one table per code, shared by screens and sheets. */
export const confidenceWords: Readonly<Record<Confidence, string>> = {
  seen: "read in the source",
  "seen-older": "from an older edition: check your copy",
  "seen-part": "read in part: check your copy",
  derived: "worked out from sourced figures",
  memory: "from memory: check your copy",
  "common-practice": "common practice, no published source",
  "own-estimate": "our own estimate",
};

export const outcomeWords: Readonly<Record<Outcome, string>> = {
  cured: "Cured",
  better: "Better",
  "no-difference": "No difference",
  worse: "Worse",
};

export const processWords: Readonly<Record<Process, string>> = {
  "FCAW-S": "Flux-cored, self-shielded",
  "FCAW-G": "Flux-cored, gas-shielded",
  GMAW: "Solid wire with gas",
  SMAW: "Stick",
  GTAW: "TIG",
};

export const transferWords: Readonly<Record<Transfer, string>> = {
  "short-circuit": "short circuit",
  globular: "globular",
  spray: "spray",
  pulsed: "pulsed",
};

export const gasWords: Readonly<Record<Gas, string>> = {
  none: "none",
  CO2: "CO2",
  "75Ar-25CO2": "75 Ar / 25 CO2",
  "80Ar-20CO2": "80 Ar / 20 CO2",
  "90Ar-10CO2": "90 Ar / 10 CO2",
  "98Ar-2O2": "98 Ar / 2 O2",
  "98Ar-2CO2": "98 Ar / 2 CO2",
  "90He-7.5Ar-2.5CO2": "90 He / 7.5 Ar / 2.5 CO2",
  Ar: "argon",
};

export const baseMetalWords: Readonly<Record<BaseMetal, string>> = {
  "carbon-steel": "carbon steel",
  stainless: "stainless",
  "low-alloy": "low-alloy steel",
};

export const surfaceWords: Readonly<Record<Surface, string>> = {
  bright: "bright metal",
  "mill-scale": "mill scale",
  "light-rust": "light rust",
  "heavy-rust": "heavy rust",
  "oil-or-paint": "oil or paint",
  galvanised: "galvanised",
  primed: "primed",
  wet: "wet",
};

export const inputPowerWords: Readonly<Record<InputPower, string>> = {
  "120V": "120 V",
  "230V": "230 V",
  "400V-3ph": "400 V three-phase",
};

export const jointWords: Readonly<Record<Joint, string>> = {
  "bead-on-plate": "bead on plate",
  "stringer-pad": "pad of stringers",
  lap: "lap joint",
  tee: "T-joint",
  "outside-corner": "outside corner",
  "butt-open": "butt, open root",
  "butt-backed": "butt on backing",
  "groove-open": "groove, open root",
  "groove-backed": "groove over backing",
};

export const positionWords: Readonly<Record<Position, string>> = {
  flat: "flat",
  horizontal: "horizontal",
  vertical: "vertical",
  overhead: "overhead",
};

export const progressionWords: Readonly<Record<Progression, string>> = { up: "upward", down: "downward" };

export const polarityWords: Readonly<Record<Polarity, string>> = {
  DCEN: "electrode negative (DCEN)",
  DCEP: "electrode positive (DCEP)",
  AC: "AC",
};

export const placeWords: Readonly<Record<Place, string>> = {
  "upper-toe": "upper toe",
  "lower-toe": "lower toe",
  "left-toe": "left toe",
  "right-toe": "right toe",
  "both-toes": "both toes",
  face: "face",
  root: "root",
  beside: "beside the bead",
};

export const stretchWords: Readonly<Record<Stretch, string>> = {
  start: "at the start",
  run: "along the run",
  "whole-length": "whole length",
  crater: "at the crater",
  restart: "at a restart",
};

export const patternWords: Readonly<Record<Pattern, string>> = {
  single: "single",
  scattered: "scattered",
  clustered: "in a cluster",
  "in-line": "in a line",
  herringbone: "herringbone",
  periodic: "at regular intervals",
  intermittent: "on and off",
  continuous: "continuous",
  "one-side": "one side only",
  "weave-turns": "at the turns of the weave",
  "with-soot": "with heavy soot",
  "with-dull-grey-face": "with a dull grey face",
  fine: "fine",
  coarse: "coarse",
};

/** Sixteenths of certainty would be a false promise: a word and a rounded share. */
export function chanceWords(probability: number): string {
  const share = Math.round(probability * 100);
  // Nothing worked out from what was written down is certain.
  if (share > 99) return "very likely, over 99 %";
  if (probability >= 0.75) return `very likely, ${share} %`;
  if (probability >= 0.4) return `likely, ${share} %`;
  if (probability >= 0.15) return `possible, ${share} %`;
  return share < 1 ? "unlikely, under 1 %" : `unlikely, ${share} %`;
}

export const cautionLines: readonly string[] = [
  "Acceptance belongs to the governing code, the contract and qualified inspection personnel, not to this sheet.",
  "Fusion and anything below the surface cannot be seen in a photo. A crack, suspected lack of fusion or arc strike goes to a qualified inspector before repair.",
  "Slag is hot and flies: safety glasses with side shields under the hood, gloves, and wait until it no longer glows.",
  "Keep your head out of the plume and ventilate. Flux-cored fume carries manganese; stainless adds hexavalent chromium; zinc gives metal fume fever.",
  "Windows are starting points: the wire's own data sheet and the qualified procedure govern.",
];
