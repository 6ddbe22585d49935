import { STEP } from "./steps/target";
import type { Change } from "./types";

/**
 * How far to go where the reading itself is not known, as a share of whatever it is: a fifth of the travel, a tenth of
 * feed or amps (common steps, from memory). null where the change has a number of its own, or none at all.
 */
export function usualShare({
  unitKind,
  toSi,
  stepSi,
  toText,
}: Pick<Change, "unitKind" | "toSi" | "stepSi" | "toText">): number | null {
  if (toSi !== null || stepSi !== null || toText !== null) return null;
  if (unitKind === "travel-speed") return STEP.travelShare;
  if (unitKind === "wire-feed") return STEP.feedShare;
  return unitKind === "current" ? STEP.ampsShare : null;
}
