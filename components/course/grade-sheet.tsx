import Link from "next/link";
import { page, Panel } from "@/components/ui";
import { handInStateWords, shareWords, type GradeCell, type Gradebook } from "@/lib/course";
import { formatQuantity } from "@/lib/units";
import styles from "./grade-sheet.module.css";

export interface GradeStudentName {
  readonly key: string;
  readonly name: string | null;
  readonly mark: string | null;
  readonly personId: string | null;
}

/** Students by exercises; each cell leads to the hand-in it speaks of. */
export function GradeSheet({
  exercises,
  students,
  book,
}: {
  exercises: readonly { readonly id: string; readonly title: string }[];
  students: readonly GradeStudentName[];
  book: Gradebook;
}) {
  return (
    <div className={styles.scroll} tabIndex={0} role="region" aria-label="Gradebook">
      <table className={styles.sheet}>
        <thead>
          <tr>
            <th scope="col">Student</th>
            {exercises.map(({ id, title }) => (
              <th key={id} scope="col">
                <Link href={`/exercises/${id}`}>{title}</Link>
              </th>
            ))}
            <th scope="col">Mean</th>
          </tr>
        </thead>
        <tbody>
          {students.map(({ key, name, mark, personId }, i) => (
            <tr key={key}>
              <th scope="row">
                {personId ? <Link href={`/students/${personId}`}>{name ?? "Name removed"}</Link> : name}
                {mark && ` (${mark})`}
                {!personId && <small>not linked to anybody</small>}
              </th>
              {(book.rows[i]?.cells ?? []).map((cell, j) => (
                <td key={exercises[j]?.id}>
                  <Cell cell={cell} />
                </td>
              ))}
              <td>{shareWords(book.rows[i]?.mean ?? null)}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">Mean of the class</th>
            {book.columns.map(({ exerciseId, mean, of }) => (
              <td key={exerciseId}>{mean === null ? "" : `${shareWords(mean)} of ${of}`}</td>
            ))}
            <td />
          </tr>
        </tfoot>
      </table>
    </div>
  );
}

function Cell({ cell: { state, tries, score } }: { cell: GradeCell }) {
  const newest = tries.at(-1);
  if (!newest) return <span className={styles.none}>{handInStateWords[state]}</span>;
  const points = score && (score.share === null ? "not whole" : shareWords(score.share));
  return (
    <Link href={`/feedback/${newest.handInId}`} className={styles.cell}>
      {points && <strong>{points}</strong>}
      <small className={state === "waiting" ? styles.wait : undefined}>
        {handInStateWords[state]}
        {tries.length > 1 && `, attempt ${tries.length}`}
        {newest.late && ", late"}
      </small>
    </Link>
  );
}

/** How far each line of a rubric was reached: where the class is weak. */
export function LineMeans({ titles, columns }: { titles: readonly string[]; columns: Gradebook["columns"] }) {
  return (
    <div className={page.columns}>
      {columns.map(({ exerciseId, lines }, i) =>
        lines.every(({ of }) => of === 0) ? null : (
          <Panel key={exerciseId} title={titles[i]} tone="purple">
            <table className={page.plainTable}>
              <thead>
                <tr>
                  <th scope="col">Line</th>
                  <th scope="col">Mean, of 4</th>
                  <th scope="col">Students</th>
                </tr>
              </thead>
              <tbody>
                {lines.map(({ title, mean, of }) => (
                  <tr key={title}>
                    <th scope="row">{title}</th>
                    <td>{mean === null ? "not marked" : formatQuantity("tenths", mean, "metric")}</td>
                    <td>{of}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </Panel>
        ),
      )}
    </div>
  );
}
