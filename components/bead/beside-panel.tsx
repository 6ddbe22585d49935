"use client";

import { useState } from "react";
import {
  acceptSentence,
  compareVerdicts,
  type AcceptIssue,
  type CriteriaSummary,
  type Verdict,
  type VerdictRow,
} from "@/lib/accept";
import type { BeadJudgement } from "@/lib/assess";
import type { Result } from "@/lib/base";
import { reasonWords, resultWords, rowLimitText, rowValueText, verdictWords } from "@/lib/report";
import type { UnitPreferences } from "@/lib/units";
import { CriteriaOptions } from "@/components/criteria";
import { Field, page, Panel, type PanelTone } from "@/components/ui";
import styles from "./beside-panel.module.css";
import shared from "./verdict-panel.module.css";
import { settingsOnChoice } from "./settings-on-choice";

export interface BesidePanelProps {
  readonly criteria: readonly CriteriaSummary[];
  readonly judgement: BeadJudgement;
  readonly verdict: Verdict;
  readonly judgeBy: (
    other: Pick<BeadJudgement, "criteriaId" | "criteriaSettings">,
  ) => Result<Verdict, AcceptIssue> | null;
  readonly units: UnitPreferences;
}

/** The bead judged by a second set or edition, to look at beside the first. Nothing of it is kept. */
export function BesidePanel({ criteria, judgement, verdict, judgeBy, units }: BesidePanelProps) {
  const [otherId, setOtherId] = useState<string | null>(null);
  const chosen = criteria.find(({ id }) => id === judgement.criteriaId);
  const later = criteria.find(({ id }) => id === chosen?.newest);
  const other = otherId === judgement.criteriaId ? undefined : criteria.find(({ id }) => id === otherId);
  const judged = other
    ? judgeBy({
        criteriaId: other.id,
        criteriaSettings: settingsOnChoice(other, judgement.criteriaSettings, units),
      })
    : null;
  return (
    <details className={shared.more}>
      <summary>Judge by another beside it</summary>
      <div className={styles.stack}>
        <Field
          label="Beside it"
          hint={`Only to look at: the bead stays judged by ${verdict.criteriaTitle}, ${verdict.edition}.${
            later ? ` There is a later edition, ${later.edition}.` : ""
          }`}
        >
          {(ids) => (
            <select
              {...ids}
              value={other?.id ?? ""}
              onChange={({ target }) => setOtherId(target.value || null)}
            >
              <option value="">Choose a set or edition</option>
              <CriteriaOptions criteria={criteria.filter(({ id }) => id !== judgement.criteriaId)} />
            </select>
          )}
        </Field>
        {judged && !judged.ok && judged.issues[0] && (
          <Panel tone="bronze">{acceptSentence(judged.issues[0])}</Panel>
        )}
        {judged?.ok && <SideBySide first={verdict} second={judged.value} units={units} />}
      </div>
    </details>
  );
}

const tones: Readonly<Record<Verdict["verdict"], PanelTone>> = {
  accept: "ok",
  reject: "danger",
  "cannot-say": "bronze",
};

/** Two verdicts on one weld: the two words, then every rule on which they differ. */
export function SideBySide({
  first,
  second,
  units,
}: {
  readonly first: Verdict;
  readonly second: Verdict;
  readonly units: UnitPreferences;
}) {
  const { differences, alike } = compareVerdicts(first, second);
  const verdicts = [first, second];
  return (
    <>
      <div className={styles.words} role="status">
        {verdicts.map((one) => (
          <Panel key={one.criteriaId} tone={tones[one.verdict]} title={verdictWords[one.verdict].short}>
            <p>{nameOf(one)}</p>
            {one.checkYourCopy && <p className={shared.check}>Check your copy.</p>}
          </Panel>
        ))}
      </div>
      <p>{countSentence(differences.length, alike)}</p>
      {differences.length > 0 && (
        <div className={page.scroll} role="region" aria-label="Where they differ" tabIndex={0}>
          <table className={page.table}>
            <thead>
              <tr>
                <th scope="col">Clause</th>
                {verdicts.map((one) => (
                  <th key={one.criteriaId} scope="col">
                    {nameOf(one)}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {differences.map(({ rule, title, first: a, second: b }) => (
                <tr key={rule}>
                  <th scope="row">{title}</th>
                  <td>{rowSays(a, units)}</td>
                  <td>{rowSays(b, units)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </>
  );
}

const nameOf = ({ criteriaTitle, edition }: Verdict): string => `${criteriaTitle}, ${edition}`;

function countSentence(different: number, alike: number): string {
  const clauses = (count: number): string => (count === 1 ? "1 clause" : `${count} clauses`);
  if (different === 0) return `They judge ${clauses(alike)} alike and differ in none.`;
  return `They differ in ${clauses(different)} and judge ${alike === 0 ? "none" : clauses(alike)} alike.`;
}

/** "Not met: read 0.7 mm; limit at most 0.5 mm" */
function rowSays(row: VerdictRow | null, units: UnitPreferences): string {
  if (row === null) return "No such clause";
  const figures = [rowValueText(row, units), rowLimitText(row, units)].filter(Boolean).join("; ");
  return `${resultWords[row.result]}: ${figures || reasonWords[row.reason]}`;
}
