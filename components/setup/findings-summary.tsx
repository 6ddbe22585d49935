"use client";

import { Panel } from "@/components/ui";
import type { SetupField, SetupFinding, Severity } from "@/lib/setup";
import { FindingLine } from "./finding-line";
import styles from "./findings.module.css";
import { controlId, useForm } from "./form-context";

/** What the set-up check found, gravest first; each line leads to the field it stands at. */
export function FindingsSummary() {
  const { prefix, findings, units, setup } = useForm();
  const known = Object.entries(setup).filter(
    ([key, value]) => key !== "schemaVersion" && value !== null,
  ).length;
  const goTo = (field: SetupField) => {
    const control = document.getElementById(controlId(prefix, field));
    control?.scrollIntoView({ block: "center" });
    control?.focus({ preventScroll: true });
  };
  return (
    <Panel title="Set-up check" tone={tone(findings)} aside={<span>{counted(findings)}</span>}>
      <div role="status" className={styles.summary}>
        {findings.length === 0 && (
          <p>
            {known === 0
              ? "Nothing recorded yet. Leave what you do not know: the check only speaks about what is known."
              : "Nothing against it in what is recorded so far."}
          </p>
        )}
        {findings.length > 0 && (
          <ul className={styles.list}>
            {findings.map((found) => (
              <li key={found.code + found.fields[0]}>
                <button type="button" className={styles.jump} onClick={() => goTo(found.fields[0])}>
                  <FindingLine found={found} units={units} />
                </button>
              </li>
            ))}
          </ul>
        )}
      </div>
      <p className={styles.fine}>
        The windows are starting points. The wire&rsquo;s own data sheet and the governing procedure govern.
      </p>
    </Panel>
  );
}

const count = (findings: readonly SetupFinding[], severity: Severity) =>
  findings.filter((found) => found.severity === severity).length;

function tone(findings: readonly SetupFinding[]) {
  if (count(findings, "stop") > 0) return "danger";
  return count(findings, "warn") > 0 ? "bronze" : count(findings, "note") > 0 ? "blue" : "plain";
}

function counted(findings: readonly SetupFinding[]): string {
  const parts: readonly [number, string][] = [
    [count(findings, "stop"), "to stop for"],
    [count(findings, "warn"), "to check"],
    [count(findings, "note"), "to know"],
  ];
  return parts.flatMap(([n, words]) => (n > 0 ? [`${n} ${words}`] : [])).join(" · ");
}
