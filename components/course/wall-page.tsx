import type { WallContent, WallRow } from "@/lib/course";
import styles from "./paper.module.css";

/** The page for the wall, on screen and on paper. */
export function WallPage({ content }: { content: WallContent }) {
  return (
    <article className={styles.paper}>
      <p className={styles.kicker}>
        {content.group} · {content.day}
      </p>
      <h1>{content.title}</h1>
      {content.aim && <p className={styles.aim}>{content.aim}</p>}
      <dl className={styles.facts}>
        {content.facts.map(({ label, value }) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd className={styles.big}>{value}</dd>
          </div>
        ))}
      </dl>
      <Rows title="What is wrong most" head="Imperfection" rows={content.wrong} />
      <Rows title="What it likely comes from" head="First cause" rows={content.causes} />
      <p className={styles.foot}>{content.foot}</p>
    </article>
  );
}

function Rows({ title, head, rows }: { title: string; head: string; rows: readonly WallRow[] }) {
  return (
    <section>
      <h2>{title}</h2>
      {rows.length === 0 ? (
        <p>Nothing counted yet.</p>
      ) : (
        <table className={styles.bars}>
          <thead>
            <tr>
              <th scope="col">{head}</th>
              <th scope="col">Beads</th>
              <th scope="col" style={{ width: "38%" }}>
                <span className="visually-hidden">As a bar</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ name, count, interval, share }) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td>
                  {count}
                  <br />
                  <small>{interval}</small>
                </td>
                <td aria-hidden="true">
                  <span className={styles.bar} style={{ width: `${share * 100}%` }} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
