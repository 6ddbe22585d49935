import { BudgetList } from "@/components/canvas";
import { Panel } from "@/components/ui";
import { needsCheck, type Source } from "@/lib/base";
import { confidenceWords, sectionFigureRows, type SectionFigureRow } from "@/lib/report";
import { sectionSentence, type SectionMeasures } from "@/lib/section";
import type { UnitPreferences } from "@/lib/units";
import styles from "./section.module.css";

/** What is not wrong, only not there yet: the steps under the photo ask for it one by one. */
const merelyMissing: ReadonlySet<string> = new Set([
  "draw-outline",
  "draw-edge",
  "mark-root",
  "no-scale",
  "no-thickness",
]);

/** Every figure of the section with its ±; each opens into what it means and what its ± is made of. */
export function SectionFigures({ measures, units }: { measures: SectionMeasures; units: UnitPreferences }) {
  const rows = sectionFigureRows(measures, units);
  const read = rows.filter(({ quantity }) => quantity !== null);
  const unread = rows.filter(({ quantity }) => quantity === null);
  const wrong = measures.issues.filter(({ code }) => !merelyMissing.has(code));
  const lacking = measures.issues.filter(({ code }) => merelyMissing.has(code));
  return (
    <>
      {wrong.length > 0 && (
        <Panel tone="danger" title="Put this right first">
          <ul className={styles.list} role="alert">
            {wrong.map((issue) => (
              <li key={`${issue.code} ${issue.path.join()}`}>{sectionSentence(issue)}</li>
            ))}
          </ul>
        </Panel>
      )}
      <Panel title="Sizes of the section" tone="blue">
        {read.length === 0 && <p>None yet.</p>}
        <ul className={styles.figures} data-testid="section-figures">
          {read.map((row) => (
            <Figure key={row.id} row={row} units={units} />
          ))}
        </ul>
        {unread.length > 0 && (
          <details className={styles.more}>
            <summary>
              {unread.length} {unread.length === 1 ? "size" : "sizes"} not read yet, and why
            </summary>
            <p>{unread.map(({ name }) => name).join(", ")}.</p>
            <ul className={styles.list}>
              {lacking.map((issue) => (
                <li key={`${issue.code} ${String(issue.data["role"] ?? "")}`}>{sectionSentence(issue)}</li>
              ))}
            </ul>
          </details>
        )}
      </Panel>
    </>
  );
}

function Figure({ row, units }: { row: SectionFigureRow; units: UnitPreferences }) {
  const { id, name, text, meaning, quantity, source } = row;
  return (
    <li data-figure={id}>
      <details className={styles.figure}>
        <summary>
          <span>{name}</span>
          <strong>{text}</strong>
        </summary>
        <p>{meaning}</p>
        {quantity && quantity.budget.length > 0 && <BudgetList quantity={quantity} units={units} />}
        <p className={styles.small}>{sourceText(source)}</p>
      </details>
    </li>
  );
}

function sourceText(source: Source): string {
  const where = `Meant as in ${source.document}`;
  return needsCheck(source) ? `${where} (${confidenceWords[source.confidence]}).` : `${where}.`;
}
