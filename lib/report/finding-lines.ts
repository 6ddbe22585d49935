import { findingDoubt, findingSentence, showReading, type SetupFinding } from "@/lib/setup";
import type { UnitPreferences } from "@/lib/units";

/** What the set-up check found, one sentence each, worst first. */
export function findingLines(findings: readonly SetupFinding[], units: UnitPreferences): readonly string[] {
  return findings.map((found) => {
    const sentence = findingSentence(found, showReading(units));
    const doubt = findingDoubt(found);
    return doubt === null ? sentence : `${sentence} (${doubt})`;
  });
}
