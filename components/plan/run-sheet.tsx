import type { RunSheetDocument } from "@/lib/report";
import { GunFigure } from "./gun-figure";
import { Metronome } from "./metronome";
import styles from "./run-sheet.module.css";

/** What goes to the bench before a run: every dial large enough for glare and gloves, the pace, the angles, what comes of it. */
export function RunSheet({ sheet }: { sheet: RunSheetDocument }) {
  return (
    <article className={styles.sheet}>
      <header>
        <p className={styles.kicker}>{sheet.title}</p>
        <h1>{sheet.line}</h1>
        <p className={styles.fixed}>
          {sheet.fixed.map(({ label, value }) => (
            <span key={label}>
              {label}: <strong>{value}</strong>
            </span>
          ))}
        </p>
      </header>
      <section>
        <h2>Set</h2>
        <dl className={styles.dials}>
          {sheet.dials.map(({ label, values, range, why }) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd className={styles.value}>{values[0]}</dd>
              {values[1] && <dd className={styles.other}>{values[1]}</dd>}
              <dd className={styles.range}>from {range}</dd>
              <dd className={styles.why}>{why}</dd>
            </div>
          ))}
        </dl>
      </section>
      <section>
        <h2>Pace and gun</h2>
        <div className={styles.pace}>
          <Metronome pace={sheet.pace} />
          {sheet.drawings.map((drawing) => (
            <GunFigure key={drawing.title} drawing={drawing} />
          ))}
        </div>
      </section>
      <section>
        <h2>What comes of it</h2>
        <dl className={styles.gives}>
          {sheet.gives.map(({ label, value, range }) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>
                <strong>{value}</strong> {range}
              </dd>
            </div>
          ))}
        </dl>
        {sheet.limits.map((line) => (
          <p key={line} className={styles.limit}>
            {line}
          </p>
        ))}
      </section>
      <ul className={styles.cautions}>
        {sheet.cautions.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </article>
  );
}
