import { CircleAlert, Info, OctagonX } from "lucide-react";
import { findingDoubt, findingSentence, showReading, type SetupFinding, type Severity } from "@/lib/setup";
import type { UnitPreferences } from "@/lib/units";
import styles from "./findings.module.css";

export const severityWords: Record<Severity, string> = { stop: "Stop", warn: "Check", note: "Note" };
const icons = { stop: OctagonX, warn: CircleAlert, note: Info } as const;

/** One finding in words. The severity is a word and a shape as well as a colour. */
export function FindingLine({ found, units }: { found: SetupFinding; units: UnitPreferences }) {
  const Icon = icons[found.severity];
  const doubt = findingDoubt(found);
  return (
    <span className={`${styles.line} ${styles[found.severity]}`}>
      <Icon size={22} aria-hidden="true" className={styles.icon} />
      <span>
        <strong>{severityWords[found.severity]}.</strong> {findingSentence(found, showReading(units))}
        {doubt && <span className={styles.doubt}> ({doubt})</span>}
      </span>
    </span>
  );
}
