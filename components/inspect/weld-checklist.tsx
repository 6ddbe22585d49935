import { Panel } from "@/components/ui";
import type { CheckRow } from "@/lib/inspect";
import styles from "./weld-bench.module.css";

/** What is asked of a weld against what was seen, each row done or open. */
export function WeldChecklist({ rows }: { readonly rows: readonly CheckRow[] }) {
  const open = rows.filter(({ isDone }) => !isDone).length;
  return (
    <Panel
      title={open === 0 ? "All that was asked is there" : `Still open: ${open}`}
      tone={open === 0 ? "ok" : "straw"}
    >
      <ul className={styles.checks}>
        {rows.map(({ what, asked, seen, isDone }) => (
          <li key={what}>
            <strong className={isDone ? styles.done : styles.open}>{isDone ? "done" : "open"}</strong>
            <span>
              <strong>{what}</strong>
              <br />
              Asked: {asked}
              <br />
              Seen: {seen}
            </span>
          </li>
        ))}
      </ul>
    </Panel>
  );
}
