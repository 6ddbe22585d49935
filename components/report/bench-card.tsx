import type { SheetDocument } from "@/lib/report";
import styles from "./bench-card.module.css";

/** What goes to the bench: the one change, large, the settings, and the cautions. To read at arm's length in glare. */
export function BenchCard({ sheet }: { sheet: SheetDocument }) {
  return (
    <article className={styles.card}>
      <p className={styles.kicker}>
        After bead {sheet.number}: {sheet.title}
      </p>
      {sheet.inspectorFirst && (
        <p className={styles.stop}>
          A qualified inspector sees this bead before anything is changed or repaired.
        </p>
      )}
      <section className={styles.change}>
        <h1>{sheet.change ? sheet.change.sentence : "No change proposed: run it as it was."}</h1>
        {sheet.change?.step && <p className={styles.step}>{sheet.change.step}</p>}
      </section>
      <section>
        <h2>{sheet.change ? "All else stays" : "Settings"}</h2>
        {sheet.setup.length === 0 ? (
          <p>How it was run is not recorded.</p>
        ) : (
          <dl className={styles.settings}>
            {sheet.setup.map(({ label, value }) => (
              <div key={label}>
                <dt>{label}</dt>
                <dd>{value}</dd>
              </div>
            ))}
          </dl>
        )}
      </section>
      <ul className={styles.cautions}>
        {sheet.cautions.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </article>
  );
}
