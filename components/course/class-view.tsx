import Link from "next/link";
import { page, Panel } from "@/components/ui";
import { intervalText, shareText, spreadText, type ClassCount, type ClassCounts } from "@/lib/course";

/** What is wrong most in a class and whose causes repeat; counts as counts, their interval beside them. */
export function ClassView({
  title,
  counts,
  studentNames,
}: {
  title: string;
  counts: ClassCounts;
  /** By student key. */
  studentNames: Readonly<Record<string, string>>;
}) {
  if (counts.beads === 0) return null;
  return (
    <section aria-label={title} className={page.stack}>
      <h2>{title}</h2>
      <p>
        {counts.beads} {counts.beads === 1 ? "bead" : "beads"} by {counts.students}{" "}
        {counts.students === 1 ? "student" : "students"}. Looked over: {counts.looked} of {counts.beads};
        every count below is of these.
        {counts.returned > 0 && ` Feedback returned: ${counts.returned}.`}
        {counts.scores && ` Score by the rubric: ${spreadText(counts.scores)} (${counts.scores.of}).`}
        {counts.looked > 0 && ` Nothing found on ${shareText(counts.clean)}.`}
        {counts.meets.of > 0 && ` Meets its criteria, of those with a verdict: ${shareText(counts.meets)}.`}
      </p>
      <div className={page.columns}>
        <Panel title="What is wrong most" tone="bronze">
          <CountTable head="Imperfection" rows={counts.wrong} />
        </Panel>
        <Panel title="Likeliest causes" tone="purple">
          <CountTable head="First cause" rows={counts.causes} />
        </Panel>
        <Panel title="Whose causes repeat" tone="blue">
          {counts.repeats.length === 0 ? (
            <p>Nobody had the same first cause on two beads.</p>
          ) : (
            <ul className={page.list}>
              {counts.repeats.map(({ student, causeId, name, times, of, handInIds }) => (
                <li key={`${student} ${causeId}`}>
                  <strong>{studentNames[student] ?? "Unknown"}</strong>: {name}, {times} of {of} beads{" "}
                  <Leads ids={handInIds} />
                </li>
              ))}
            </ul>
          )}
        </Panel>
      </div>
    </section>
  );
}

function CountTable({ head, rows }: { head: string; rows: readonly ClassCount[] }) {
  if (rows.length === 0) return <p>Nothing counted yet.</p>;
  return (
    <table className={page.plainTable}>
      <thead>
        <tr>
          <th scope="col">{head}</th>
          <th scope="col">Beads</th>
          <th scope="col">Open</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ key, name, share, handInIds }) => (
          <tr key={key}>
            <th scope="row">{name}</th>
            <td>
              {shareText(share)}
              <br />
              <small className={page.note}>{intervalText(share)}</small>
            </td>
            <td>
              <Leads ids={handInIds} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Each count leads to what it was counted from. */
function Leads({ ids }: { ids: readonly string[] }) {
  return (
    <>
      {ids.map((id, i) => (
        <Link
          key={id}
          className={page.lead}
          href={`/feedback/${id}`}
          aria-label={`Hand-in ${i + 1} of ${ids.length}`}
        >
          {" "}
          {i + 1}
        </Link>
      ))}
    </>
  );
}
