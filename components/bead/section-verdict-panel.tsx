import { LengthField } from "@/components/setup";
import { Chip, Field, Panel, type PanelTone } from "@/components/ui";
import { sectionSetsFor, type BeadJudgement, type SectionAction, type SectionAssessment } from "@/lib/assess";
import { CHECK_YOUR_COPY, sectionClauses, sectionVerdictWords, type SectionClause } from "@/lib/report";
import { hasTwoUnitSystems, type SectionVerdict } from "@/lib/section";
import type { UnitPreferences } from "@/lib/units";
import { LookedFor } from "./looked-for";
import styles from "./section.module.css";
import shared from "./verdict-panel.module.css";

interface Props {
  readonly found: SectionAssessment;
  readonly judgement: BeadJudgement;
  readonly units: UnitPreferences;
  readonly markNumber: (id: string) => number | null;
  readonly onJudgement: (change: Partial<BeadJudgement>) => void;
  readonly onAction: (action: SectionAction) => void;
}

const tones: Readonly<Record<SectionVerdict["result"], PanelTone>> = {
  meets: "ok",
  fails: "danger",
  open: "bronze",
};

/** The section against one set of macro criteria: the word, what it still wants, then row by row. */
export function SectionVerdictPanel(props: Props) {
  const { found, judgement, units, onJudgement, onAction } = props;
  const { section, verdict } = found;
  const sets = sectionSetsFor(section.joint);
  if (sets.length === 0)
    return (
      <Panel title="Judge this section">
        <p>No macro criteria for a butt weld are carried. The sizes stand for themselves.</p>
      </Panel>
    );
  return (
    <>
      <Field
        label="Judge this section by"
        hint="The code or the procedure that the coupon was welded to says which."
      >
        {(ids) => (
          <select
            {...ids}
            value={verdict?.setId ?? ""}
            onChange={({ target }) => onJudgement({ sectionSetId: target.value || null })}
          >
            <option value="">No criteria chosen</option>
            {sets.map((set) => (
              <option key={set.id} value={set.id}>
                {set.title}, {set.edition}
              </option>
            ))}
          </select>
        )}
      </Field>
      {verdict && (
        <>
          <LengthField
            label="Throat asked for"
            hint="Where the drawing states one. Left empty, it follows from the target leg, on square plates."
            value={section.askedThroatMm}
            units={units}
            placeholder="not known"
            onChange={(mm) => onAction({ type: "section.throat", mm })}
          />
          {sets.some((set) => set.id === verdict.setId && hasTwoUnitSystems(set)) && (
            <UnitsOfTheCode judgement={judgement} onJudgement={onJudgement} />
          )}
          <Outcome {...props} verdict={verdict} />
        </>
      )}
    </>
  );
}

function UnitsOfTheCode({ judgement, onJudgement }: Pick<Props, "judgement" | "onJudgement">) {
  const now = judgement.criteriaSettings["units"] === "us" ? "us" : "si";
  return (
    <div className={styles.chips} role="group" aria-label="Units of the code">
      {(["si", "us"] as const).map((units) => (
        <Chip
          key={units}
          on={now === units}
          onClick={() => onJudgement({ criteriaSettings: { ...judgement.criteriaSettings, units } })}
        >
          {units === "si" ? "Its limits in mm" : "Its limits in inches"}
        </Chip>
      ))}
    </div>
  );
}

function Outcome({ found, verdict, markNumber, units, onAction }: Props & { verdict: SectionVerdict }) {
  const words = sectionVerdictWords[verdict.result];
  const clauses = sectionClauses(found, markNumber, units);
  const toLookFor = verdict.rows.flatMap(({ missing }) =>
    missing.flatMap((one) => (one.kind === "look" ? one.imperfections : [])),
  );
  return (
    <>
      <Panel
        tone={tones[verdict.result]}
        title={<span data-testid="section-verdict-word">{words.short}</span>}
      >
        <p>{words.long}</p>
        {clauses.some(({ checkYourCopy }) => checkYourCopy) && (
          <p className={shared.check}>{CHECK_YOUR_COPY}</p>
        )}
      </Panel>
      <LookedFor
        needed={[...new Set(toLookFor)]}
        lookedFor={found.section.lookedFor}
        where="in this section"
        onChange={(lookedFor) => onAction({ type: "section.lookedFor", lookedFor })}
      />
      <ul className={styles.rows} aria-label="Row by row" data-testid="section-rows">
        {clauses.map((row) => (
          <Row key={row.id} row={row} />
        ))}
      </ul>
      {verdict.notCovered.length > 0 && (
        <details className={shared.more}>
          <summary>Parts of the code this set does not carry</summary>
          <ul className={shared.list}>
            {verdict.notCovered.map(({ clause, note }) => (
              <li key={`${clause} ${note}`}>
                {clause}: {note}
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

function Row({ row }: { row: SectionClause }) {
  return (
    <li className={`${shared.row} ${shared[row.result]}`} data-result={row.result}>
      <span className={shared.result}>{row.resultWord}</span>
      <div>
        <strong>{row.title}</strong>
        {row.detail && <p>{row.detail}</p>}
        <p className={shared.small}>
          {row.clause}
          {row.checkYourCopy && <span className={shared.check}> Check your copy.</span>}
        </p>
      </div>
    </li>
  );
}
