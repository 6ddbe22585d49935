import { severities, type SetupCode, type SetupFact, type SetupFinding, type SetupRule } from "./finding";
import {
  flowWithoutGas,
  gasAgainstClass,
  gasAgainstMetal,
  gasCannotSpray,
  gasMissing,
  gasOnGasless,
  gasOnTungsten,
  metalAgainstClass,
  passesAgainstClass,
  polarityAgainstClass,
  polarityUnusual,
  positionAgainstClass,
  processAgainstClass,
} from "./rules-electrode";
import { currentDisagrees, currentForPlate } from "./rules-current";
import { workAngleOff } from "./rules-hand";
import { feedBeyondInput, plateBeyondInput } from "./rules-input";
import {
  gapAgainstJoint,
  plateAgainstWire,
  rodAgainstPlate,
  sprayOutOfPosition,
  transferAgainstPlate,
} from "./rules-plate";
import { chromiumFume, gasInWind, surfaceCautions } from "./rules-surface";
import {
  pushOnSlag,
  readingsAgainstUsual,
  readingsAgainstWindow,
  travelSpeedDisagrees,
  voltsAgainstFeed,
} from "./rules-window";
import type { RunSetup } from "./run-setup";

const rules: readonly SetupRule[] = [
  processAgainstClass,
  polarityAgainstClass,
  polarityUnusual,
  gasMissing,
  gasOnGasless,
  gasAgainstClass,
  gasAgainstMetal,
  gasOnTungsten,
  gasCannotSpray,
  flowWithoutGas,
  positionAgainstClass,
  sprayOutOfPosition,
  metalAgainstClass,
  passesAgainstClass,
  pushOnSlag,
  readingsAgainstUsual,
  readingsAgainstWindow,
  voltsAgainstFeed,
  feedBeyondInput,
  plateBeyondInput,
  travelSpeedDisagrees,
  currentDisagrees,
  currentForPlate,
  transferAgainstPlate,
  rodAgainstPlate,
  gapAgainstJoint,
  workAngleOff,
  plateAgainstWire,
  gasInWind,
  surfaceCautions,
  chromiumFume,
];

/**
 * Every judged fact of a set-up, right or wrong, in the order a welder checks. Pure and total; an unknown field gives no
 * fact. One statement a fault: where two rules see the same one, the graver and better informed speaks.
 */
export function factsOf(setup: RunSetup): readonly SetupFact[] {
  const facts = rules.flatMap((rule) => rule(setup));
  return facts.filter((fact) => fact.severity === null || !replaced(fact.code, facts));
}

/**
 * What is wrong or worth knowing in a set-up, before any mark; gravest first, otherwise in the order a welder checks.
 * Pure and total. An unknown field never speaks: setting a field to null may remove findings or soften one, and what
 * remains at a field was said there before at least as gravely.
 */
export function checkSetup(setup: RunSetup): readonly SetupFinding[] {
  return factsOf(setup)
    .filter((fact): fact is SetupFinding => fact.severity !== null)
    .toSorted((a, b) => severities.indexOf(a.severity) - severities.indexOf(b.severity));
}

const betterSaidBy: Partial<Record<SetupCode, SetupCode>> = {
  "polarity-unusual-for-process": "polarity-against-class",
  "gas-against-class": "gas-reactive-on-tungsten",
  "gas-against-metal": "gas-against-class",
};

function replaced(code: SetupCode, facts: readonly SetupFact[]): boolean {
  const better = betterSaidBy[code];
  return better !== undefined && facts.some((fact) => fact.code === better && fact.severity !== null);
}
