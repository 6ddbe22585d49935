import { burnThroughSheet } from "./burn-through-sheet";
import { buttToolMarks } from "./butt-tool-marks";
import { cornerLinearPores } from "./corner-linear-pores";
import { crackAlongAcross } from "./crack-along-across";
import { craterCrack } from "./crater-crack";
import { flatWideWeave } from "./flat-wide-weave";
import { gasMarksWormholes } from "./gas-marks-wormholes";
import { grooveTrappedSlag } from "./groove-trapped-slag";
import { grooveUnderfill } from "./groove-underfill";
import { hardCracks } from "./hard-cracks";
import { lapColdLap } from "./lap-cold-lap";
import type { Scenario } from "./parts";
import { poorStartArcStrike } from "./poor-start-arc-strike";
import { restartCluster } from "./restart-cluster";
import { rootSide } from "./root-side";
import { stainlessLapSpatter } from "./stainless-lap-spatter";
import { stainlessTemperColour } from "./stainless-temper-colour";
import { stringerBurnback } from "./stringer-burnback";
import { stringerPadGood } from "./stringer-pad-good";
import { stringerRopey } from "./stringer-ropey";
import { teeHollowUndersized } from "./tee-hollow-undersized";
import { teePorositySoot } from "./tee-porosity-soot";
import { teeSagging } from "./tee-sagging";
import { teeToeCrackShort } from "./tee-toe-crack-short";
import { teeToesSlag } from "./tee-toes-slag";
import { teeUndercut } from "./tee-undercut";
import { teeUnevenLegs } from "./tee-uneven-legs";
import { tigButtPulled } from "./tig-butt-pulled";
import { verticalUpUneven } from "./vertical-up-uneven";

export const scenarios = {
  "stringer-pad-good": stringerPadGood,
  "stringer-ropey": stringerRopey,
  "lap-cold-lap": lapColdLap,
  "tee-undercut": teeUndercut,
  "tee-porosity-soot": teePorositySoot,
  "tee-uneven-legs": teeUnevenLegs,
  "tee-hollow-undersized": teeHollowUndersized,
  "vertical-up-uneven": verticalUpUneven,
  "groove-trapped-slag": grooveTrappedSlag,
  "groove-underfill": grooveUnderfill,
  "root-side": rootSide,
  "gas-marks-wormholes": gasMarksWormholes,
  "flat-wide-weave": flatWideWeave,
  "corner-linear-pores": cornerLinearPores,
  "poor-start-arc-strike": poorStartArcStrike,
  "stainless-temper-colour": stainlessTemperColour,
  "stainless-lap-spatter": stainlessLapSpatter,
  "burn-through-sheet": burnThroughSheet,
  "crack-along-across": crackAlongAcross,
  "crater-crack": craterCrack,
  "restart-cluster": restartCluster,
  "tee-toes-slag": teeToesSlag,
  "tee-sagging": teeSagging,
  "stringer-burnback": stringerBurnback,
  "tee-toe-crack-short": teeToeCrackShort,
  "butt-tool-marks": buttToolMarks,
  "hard-cracks": hardCracks,
  "tig-butt-pulled": tigButtPulled,
} as const satisfies Record<string, Scenario>;

export type ScenarioName = keyof typeof scenarios;
export const scenarioNames = Object.keys(scenarios) as [ScenarioName, ...ScenarioName[]];
