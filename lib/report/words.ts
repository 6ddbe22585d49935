import type { Outcome } from "@/lib/assess";
import type { Confidence } from "@/lib/base";
import { setupFields, wordsInText } from "@/lib/setup";
import type { Pattern, Place, Stretch } from "@/lib/trade";

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

/** The answers of the set-up form; inside a sentence or a row all but the process begin small. */
export const processWords = setupFields.process.words;
export const jointWords = wordsInText(setupFields.joint.words);
export const positionWords = wordsInText(setupFields.position.words);

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
