import { burnThroughSheet } from "./burn-through-sheet";
import { craterCrack } from "./crater-crack";
import { gasMarksWormholes } from "./gas-marks-wormholes";
import { grooveTrappedSlag } from "./groove-trapped-slag";
import { lapColdLap } from "./lap-cold-lap";
import type { Scenario } from "./parts";
import { stainlessLapSpatter } from "./stainless-lap-spatter";
import { stainlessTemperColour } from "./stainless-temper-colour";
import { stringerPadGood } from "./stringer-pad-good";
import { stringerRopey } from "./stringer-ropey";
import { teePorositySoot } from "./tee-porosity-soot";
import { teeUndercut } from "./tee-undercut";
import { verticalUpUneven } from "./vertical-up-uneven";

export const scenarios = {
  "stringer-pad-good": stringerPadGood,
  "stringer-ropey": stringerRopey,
  "lap-cold-lap": lapColdLap,
  "tee-undercut": teeUndercut,
  "tee-porosity-soot": teePorositySoot,
  "vertical-up-uneven": verticalUpUneven,
  "groove-trapped-slag": grooveTrappedSlag,
  "gas-marks-wormholes": gasMarksWormholes,
  "stainless-temper-colour": stainlessTemperColour,
  "stainless-lap-spatter": stainlessLapSpatter,
  "burn-through-sheet": burnThroughSheet,
  "crater-crack": craterCrack,
} as const satisfies Record<string, Scenario>;

export type ScenarioName = keyof typeof scenarios;
export const scenarioNames = Object.keys(scenarios) as [ScenarioName, ...ScenarioName[]];
