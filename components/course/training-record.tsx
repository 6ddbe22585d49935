import { LocalTime } from "@/components/ui";
import styles from "./paper.module.css";

export interface ShownExercise {
  readonly id: string;
  readonly title: string;
  /** Joint, position and wire it asked for, in words; "" where it did not say. */
  readonly asked: string;
  readonly attempt: number;
  /** ISO 8601, UTC. */
  readonly handedInAt: string;
  /** null: not answered. */
  readonly returnedAt: string | null;
  readonly score: string | null;
  readonly found: readonly string[];
}

/** One sheet of what a person was asked, showed and was told. It says that it is no qualification. */
export function TrainingRecord({
  name,
  mark,
  groups,
  shown,
}: {
  name: string | null;
  mark: string | null;
  groups: readonly string[];
  shown: readonly ShownExercise[];
}) {
  const answered = shown.filter(({ returnedAt }) => returnedAt !== null).length;
  return (
    <article className={styles.paper}>
      <p className={styles.kicker}>Training record{groups.length > 0 && `, ${groups.join(", ")}`}</p>
      <h1>
        {name ?? "Name removed"}
        {mark && ` (${mark})`}
      </h1>
      <p>
        {shown.length === 1 ? "One bead" : `${shown.length} beads`} handed in, {answered} answered.
      </p>
      {shown.length > 0 && (
        <table className={styles.record}>
          <thead>
            <tr>
              <th scope="col">Exercise</th>
              <th scope="col">Attempt</th>
              <th scope="col">Handed in</th>
              <th scope="col">Answered</th>
              <th scope="col">Score</th>
              <th scope="col">Found</th>
            </tr>
          </thead>
          <tbody>
            {shown.map(({ id, title, asked, attempt, handedInAt, returnedAt, score, found }) => (
              <tr key={id}>
                <th scope="row">
                  {title}
                  {asked && <small>{asked}</small>}
                </th>
                <td>{attempt}</td>
                <td>
                  <LocalTime iso={handedInAt} only="day" />
                </td>
                <td>{returnedAt ? <LocalTime iso={returnedAt} only="day" /> : "waits"}</td>
                <td>{score}</td>
                <td>{found.join(", ")}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <dl className={styles.signs}>
        <div>
          <dt>Instructor</dt>
          <dd />
        </div>
        <div>
          <dt>Day</dt>
          <dd />
        </div>
      </dl>
      <p className={styles.foot}>
        This sheet says what was practised and how it was judged in training. It is no qualification: it
        qualifies nobody to weld to any code, and nobody may be put to work on the strength of it.
        Qualification is tested and given by the rules of the governing code.
      </p>
    </article>
  );
}
