import type { CriteriaSummary } from "@/lib/accept";
import type { BeadJudgement } from "@/lib/assess";
import type { UnitPreferences } from "@/lib/units";

/**
 * What is written down when a set is chosen. A code that states both unit systems applies one of them: the one its
 * chooser works in, from then on with the bead, whoever looks at it. What was set before stays.
 */
export function settingsOnChoice(
  set: CriteriaSummary | undefined,
  kept: BeadJudgement["criteriaSettings"],
  units: UnitPreferences,
): BeadJudgement["criteriaSettings"] {
  const asks = set?.settings.some(({ id }) => id === "units") ?? false;
  return asks ? { units: units.length === "in" ? "us" : "si", ...kept } : kept;
}
