import Link from "next/link";
import { buttonClass, page, Panel } from "@/components/ui";
import type { CriteriaSummary } from "@/lib/accept";
import styles from "./criteria.module.css";

/** How much of a set a licensed copy has to confirm. */
function confidence({ rules }: CriteriaSummary): string {
  const doubtful = rules.filter(({ checkYourCopy }) => checkYourCopy).length;
  if (doubtful === 0) return `${rules.length} rules, each seen in the edition named.`;
  return `${rules.length} rules; ${doubtful === rules.length ? "all" : doubtful} to be checked against your copy.`;
}

/** "fillet, butt and surfacing" */
const inWords = (names: readonly string[]): string =>
  names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;

/** A set that comes with the program: edition, how sure it is, and its limits. */
export function CodeSet({ set, copies }: { readonly set: CriteriaSummary; readonly copies: boolean }) {
  const later = set.editions.find(({ id }) => id === set.newest);
  return (
    <Panel title={`${set.title}, ${set.edition}`} tone="blue">
      <p>
        {set.document}. For {inWords(set.weldKinds)} welds. {confidence(set)}
        {later && ` A later edition, ${later.edition}, stands beside it.`}
      </p>
      <details className={styles.more}>
        <summary>Its limits</summary>
        <div className={page.scroll} role="region" aria-label={`Limits of ${set.title}`} tabIndex={0}>
          <table className={page.table}>
            <thead>
              <tr>
                <th scope="col">Clause</th>
                <th scope="col">What</th>
                <th scope="col">Limits</th>
              </tr>
            </thead>
            <tbody>
              {set.rules.map((rule) => (
                <tr key={rule.id}>
                  <td>{rule.clause}</td>
                  <td>{rule.title}</td>
                  <td>
                    {rule.limits.join("; ")}
                    {rule.checkYourCopy && <strong> Check your copy.</strong>}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </details>
      {copies && (
        <div>
          <Link href={`/criteria/new?from=${set.id}`} className={buttonClass()}>
            Start limits of your own from it
          </Link>
        </div>
      )}
    </Panel>
  );
}
