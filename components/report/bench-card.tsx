import type { BenchCardDocument } from "@/lib/report";
import styles from "./bench-card.module.css";

/** What goes to the bench: the one change, large, the settings of the next bead, and the cautions. To read at arm's length in glare. */
export function BenchCard({ card }: { card: BenchCardDocument }) {
  const { settings } = card;
  return (
    <article className={styles.card}>
      <p className={styles.kicker}>
        After bead {card.number}: {card.title}
      </p>
      {card.inspectorFirst && (
        <p className={styles.stop}>
          A qualified inspector sees this bead before anything is changed or repaired.
        </p>
      )}
      <section className={styles.change}>
        <h1>{card.headline}</h1>
        {card.steps.map((step, i) => (
          <p key={step} className={i === 0 ? styles.step : styles.other}>
            {step}
          </p>
        ))}
        {card.grounds.map((line) => (
          <p key={line} className={styles.ground}>
            {line}
          </p>
        ))}
      </section>
      <section>
        <h2>
          {settings.some(({ isChanged }) => isChanged)
            ? "Set for the next bead; what is framed is new, all else stays"
            : "Settings"}
        </h2>
        {settings.length === 0 ? (
          <p>How it was run is not recorded.</p>
        ) : (
          <dl className={styles.settings}>
            {settings.map(({ label, values, isChanged }) => (
              <div key={label} className={isChanged ? styles.changed : undefined}>
                <dt>
                  {label}
                  {isChanged && <span className="visually-hidden"> (new)</span>}
                </dt>
                {values.map((value, i) => (
                  <dd key={value} className={i === 0 ? undefined : styles.other}>
                    {value}
                  </dd>
                ))}
              </div>
            ))}
          </dl>
        )}
      </section>
      <ul className={styles.cautions}>
        {card.cautions.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </article>
  );
}
