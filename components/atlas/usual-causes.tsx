import { Panel } from "@/components/ui";
import type { AtlasEntry } from "@/lib/atlas";
import type { UsualCause } from "@/lib/diagnose";
import { confidenceWords, processWords } from "@/lib/report";
import type { Process } from "@/lib/trade";
import styles from "./usual-causes.module.css";

const SHOWN = 5;

/** What leaves it, the most named first, each with how it does and what to change on the next bead. */
export function UsualCauses({ entry, process }: { entry: AtlasEntry; process: Process | null }) {
  const { causes, causeless } = entry;
  if (causeless !== null)
    return (
      <Panel tone="plain">
        <p>{causeless.charAt(0).toUpperCase() + causeless.slice(1)}</p>
      </Panel>
    );
  const row = (cause: UsualCause) => <Cause key={cause.id} cause={cause} tellProcesses={process === null} />;
  const rest = causes.slice(SHOWN);
  return (
    <>
      <ol className={styles.list}>{causes.slice(0, SHOWN).map(row)}</ol>
      {rest.length > 0 && (
        <details className={styles.more}>
          <summary>{rest.length} less named</summary>
          <ol className={styles.list} start={SHOWN + 1}>
            {rest.map(row)}
          </ol>
        </details>
      )}
      <p className={styles.note}>
        In the order in which documents of the trade name them: no share of beads. Which it is on a bead, its
        marks and settings say under Causes.
      </p>
    </>
  );
}

function Cause({ cause, tellProcesses }: { cause: UsualCause; tellProcesses: boolean }) {
  const { name, because, correction, processes, sources } = cause;
  return (
    <li className={styles.cause}>
      <div>
        <h3>{name}</h3>
        <p>{because}</p>
        {tellProcesses && (
          <p className={styles.note}>{processes.map((one) => processWords[one]).join(", ")}</p>
        )}
      </div>
      <p className={styles.change}>{correction}</p>
      <details className={styles.sources}>
        <summary>Who says so</summary>
        <ul>
          {sources.map((source) => (
            <li key={`${source.document}${source.clause ?? ""}`}>
              {[source.document, source.clause].filter(Boolean).join(", ")} (
              {confidenceWords[source.confidence]})
            </li>
          ))}
        </ul>
      </details>
    </li>
  );
}
