import { page, Panel } from "@/components/ui";
import type { AttributeStudy } from "@/lib/eye";
import { shareText } from "@/lib/trends";
import { kappaText } from "./kappa-text";

/** People compared on the same beads: how right each is, and how alike they are. */
export function StudyTable({ title, study }: { title: string; study: AttributeStudy }) {
  return (
    <Panel title={title} tone="blue">
      <div className={page.scroll}>
        <table className={page.table}>
          <thead>
            <tr>
              <th scope="col">Who</th>
              <th scope="col">Right</th>
              <th scope="col">Passed what fails</th>
              <th scope="col">Failed what is good</th>
              <th scope="col">Kappa with what is so</th>
            </tr>
          </thead>
          <tbody>
            {study.people.map(({ name, right, misses, falseAlarms, withTruth }) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td>{shareText(right)}</td>
                <td>{shareText(misses)}</td>
                <td>{shareText(falseAlarms)}</td>
                <td>{kappaText(withTruth)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {study.pairs.length > 0 && (
        <ul>
          {study.pairs.map(({ one, other, kappa }) => (
            <li key={`${one} ${other}`}>
              {one} with {other}: kappa {kappaText(kappa)}
            </li>
          ))}
        </ul>
      )}
      {study.together && <p>All together, Fleiss’ kappa: {kappaText(study.together)}</p>}
      <p className={page.note}>
        In parentheses what so few beads say at 95 %. Kappa is agreement beyond chance: 1 is all, 0 is none.
      </p>
    </Panel>
  );
}
