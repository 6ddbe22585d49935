"use client";

import type { CriteriaSummary, RowResult, Verdict, VerdictRow } from "@/lib/accept";
import type { BeadJudgement } from "@/lib/assess";
import {
  CHECK_YOUR_COPY,
  missingSentences,
  codeUnitsOf,
  contradictionSentence,
  looks,
  resultWords,
  rowSentence,
  notCarriedSentence,
  unusedSentence,
  verdictSays,
  type RowWords,
} from "@/lib/report";
import type { UnitPreferences } from "@/lib/units";
import { AtlasLinks } from "@/components/atlas";
import { CriteriaOptions } from "@/components/criteria";
import { Chip, Field, Panel } from "@/components/ui";
import { LookedFor } from "./looked-for";
import { settingsOnChoice } from "./settings-on-choice";
import styles from "./verdict-panel.module.css";

export interface VerdictPanelProps {
  readonly criteria: readonly CriteriaSummary[];
  readonly judgement: BeadJudgement;
  readonly verdict: Verdict | null;
  /** Why there is no verdict although a set is chosen. */
  readonly problem: string | null;
  readonly markNumber: (id: string) => number | null;
  readonly units: UnitPreferences;
  readonly onChange: (change: Partial<BeadJudgement>) => void;
}

/** Where the bead stands against one chosen criteria set: the word, what is missing, then clause by clause. */
export function VerdictPanel(props: VerdictPanelProps) {
  const { criteria, judgement, verdict, problem, units, onChange } = props;
  const chosen = criteria.find((set) => set.id === judgement.criteriaId) ?? null;
  return (
    <div className={styles.stack}>
      <Field label="Judge by" hint="The governing code, contract or procedure says which one applies.">
        {(ids) => (
          <select
            {...ids}
            value={judgement.criteriaId ?? ""}
            onChange={({ target }) => {
              const set = criteria.find(({ id }) => id === target.value);
              const criteriaSettings = settingsOnChoice(set, judgement.criteriaSettings, units);
              onChange({ criteriaId: target.value || null, criteriaSettings });
            }}
          >
            <option value="">No criteria chosen</option>
            <CriteriaOptions criteria={criteria} />
          </select>
        )}
      </Field>
      {chosen && chosen.settings.length > 0 && (
        <details className={styles.more}>
          <summary>Where {chosen.title} leaves a choice</summary>
          <div className={styles.stack}>
            <Settings chosen={chosen} judgement={judgement} onChange={onChange} />
          </div>
        </details>
      )}
      {problem && <Panel tone="bronze">{problem}</Panel>}
      {verdict && <Outcome {...props} verdict={verdict} />}
    </div>
  );
}

function Settings({
  chosen,
  judgement,
  onChange,
}: {
  chosen: CriteriaSummary;
  judgement: BeadJudgement;
  onChange: VerdictPanelProps["onChange"];
}) {
  return chosen.settings.map((setting) => (
    <Field key={setting.id} label={setting.title} hint={setting.note}>
      {(ids) => (
        <div
          {...{ id: ids.id, "aria-describedby": ids["aria-describedby"] }}
          className={styles.chips}
          role="group"
          aria-label={setting.title}
        >
          {setting.choices.map((choice) => {
            const now = judgement.criteriaSettings[setting.id] ?? setting.default;
            return (
              <Chip
                key={String(choice.value)}
                on={now === choice.value}
                onClick={() =>
                  onChange({
                    criteriaSettings: { ...judgement.criteriaSettings, [setting.id]: choice.value },
                  })
                }
              >
                {choice.title}
              </Chip>
            );
          })}
        </div>
      )}
    </Field>
  ));
}

const tones: Readonly<Record<Verdict["verdict"], "ok" | "danger" | "bronze">> = {
  accept: "ok",
  reject: "danger",
  "cannot-say": "bronze",
};

function Outcome({
  verdict,
  judgement,
  markNumber,
  units,
  onChange,
}: VerdictPanelProps & { verdict: Verdict }) {
  const words = verdictSays(verdict);
  const notCarried = notCarriedSentence(verdict.notCarried);
  const unused = unusedSentence(verdict, markNumber);
  return (
    <>
      <Panel
        tone={verdict.lookedAt ? tones[verdict.verdict] : "straw"}
        title={<span data-testid="verdict-word">{words.short}</span>}
      >
        <p>{words.long}</p>
        <p className={styles.small}>
          {verdict.criteriaTitle}, {verdict.edition}
        </p>
        {notCarried && <p data-testid="not-carried">{notCarried}</p>}
        {verdict.checkYourCopy && (
          <p className={styles.check} data-testid="check-your-copy">
            {CHECK_YOUR_COPY}
          </p>
        )}
      </Panel>
      {verdict.contradictions.length > 0 && (
        <Panel tone="danger" title="Readings that cannot stand together">
          <ul className={styles.list}>
            {verdict.contradictions.map((one) => {
              const sentence = contradictionSentence(one, markNumber);
              return <li key={sentence}>{sentence}</li>;
            })}
          </ul>
        </Panel>
      )}
      {verdict.referToInspector.length > 0 && (
        <Panel tone="danger" title="A qualified inspector first">
          <p>
            A crack, suspected lack of fusion or arc strike is marked. Change and repair nothing before it has
            been looked at.
          </p>
        </Panel>
      )}
      {verdict.missing.some((missing) => missing.quantity !== "look") && (
        <Panel tone="straw" title="Readings that would settle it">
          <ul className={styles.list}>
            {missingSentences(
              verdict.missing.filter(({ quantity }) => quantity !== "look"),
              markNumber,
            ).map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </Panel>
      )}
      <LookedFor
        needed={verdict.notLookedFor}
        lookedFor={judgement.lookedFor}
        onChange={(lookedFor) => onChange({ lookedFor })}
      />
      {unused && <p className={styles.small}>{unused}</p>}
      <Clauses rows={verdict.rows} words={{ units, codeUnits: codeUnitsOf(verdict), markNumber }} />
      {verdict.notCovered.length > 0 && (
        <details className={styles.more}>
          <summary>Parts of the code this set does not carry</summary>
          <ul className={styles.list}>
            {verdict.notCovered.map((part) => (
              <li key={part.clause}>
                {part.clause}: {part.note}
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

function Clauses({ rows, words }: { rows: readonly VerdictRow[]; words: RowWords }) {
  const shown = rows.filter((row) => row.result !== "not-applicable");
  const rest = rows.filter((row) => row.result === "not-applicable");
  return (
    <section className={styles.clauses}>
      <h3>Clause by clause</h3>
      <ul>
        {shown.map((row) => (
          <ClauseRow key={row.ruleId} row={row} words={words} />
        ))}
      </ul>
      {rest.length > 0 && (
        <details className={styles.more}>
          <summary>{rest.length} clauses that do not apply here</summary>
          <ul>
            {rest.map((row) => (
              <ClauseRow key={row.ruleId} row={row} words={words} />
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

const resultClass: Readonly<Record<RowResult, string>> = {
  fails: "fails",
  open: "open",
  meets: "meets",
  "not-applicable": "off",
};

function ClauseRow({ row, words }: { row: VerdictRow; words: RowWords }) {
  return (
    <li className={`${styles.row} ${styles[resultClass[row.result]]}`}>
      <span className={styles.result}>{resultWords[row.result]}</span>
      <div>
        <strong>{row.title}</strong>
        <p>{rowSentence(row, words)}</p>
        {row.notLookedFor.length > 0 && (
          <p className={styles.small}>
            Not looked for:{" "}
            {looks(row.notLookedFor)
              .map(({ name }) => name)
              .join(", ")}
          </p>
        )}
        <p className={styles.small}>
          {row.clause}, {row.edition}
          {row.checkYourCopy && (
            <span className={styles.check}>
              {" "}
              Check your copy: this figure rests on memory or an older edition.
            </span>
          )}
        </p>
        {row.result !== "meets" && row.result !== "not-applicable" && <AtlasLinks ids={row.imperfections} />}
      </div>
    </li>
  );
}
