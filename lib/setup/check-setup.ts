import { severities, type SetupCode, type SetupFinding, type SetupRule } from "./finding";
import {
  flowWithoutGas,
  gasAgainstClass,
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
import { chromiumFume, gasInWind, surfaceCautions } from "./rules-surface";
import { feedBeyondInput, plateAgainstWire, plateBeyondInput } from "./rules-plate";
import { pushOnSlag, readingsAgainstWindow, travelSpeedDisagrees, voltsAgainstFeed } from "./rules-window";
import type { RunSetup } from "./run-setup";

const rules: readonly SetupRule[] = [
  processAgainstClass,
  polarityAgainstClass,
  polarityUnusual,
  gasMissing,
  gasOnGasless,
  gasAgainstClass,
  gasOnTungsten,
  gasCannotSpray,
  flowWithoutGas,
  positionAgainstClass,
  metalAgainstClass,
  passesAgainstClass,
  pushOnSlag,
  readingsAgainstWindow,
  voltsAgainstFeed,
  feedBeyondInput,
  plateBeyondInput,
  travelSpeedDisagrees,
  plateAgainstWire,
  gasInWind,
  surfaceCautions,
  chromiumFume,
];

/**
 * What is wrong or worth knowing in a set-up, before any mark; gravest first, otherwise in the order a welder checks.
 * Pure and total. An unknown field never speaks: setting a field to null may remove findings or soften one, and what
 * remains at a field was said there before at least as gravely.
 */
export function checkSetup(setup: RunSetup): readonly SetupFinding[] {
  const found = rules.flatMap((rule) => rule(setup));
  const said = found.filter((f) => !replaced(f.code, found));
  return said.toSorted((a, b) => severities.indexOf(a.severity) - severities.indexOf(b.severity));
}

/** One statement a fault: where two rules see the same one, the graver and better informed speaks. */
const betterSaidBy: Partial<Record<SetupCode, SetupCode>> = {
  "polarity-unusual-for-process": "polarity-against-class",
  "gas-against-class": "gas-reactive-on-tungsten",
};

function replaced(code: SetupCode, found: readonly SetupFinding[]): boolean {
  const better = betterSaidBy[code];
  return better !== undefined && found.some((f) => f.code === better);
}
