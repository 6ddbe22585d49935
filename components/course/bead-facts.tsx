import { VerdictBadge } from "@/components/beads";
import { Panel } from "@/components/ui";
import type { BeadSummary } from "@/lib/report";
import styles from "./course.module.css";

/** What Toeline itself says of the bead, from what was marked and recorded. */
export function BeadFacts({ summary, href }: { summary: BeadSummary; href?: string }) {
  return (
    <Panel
      title={`What Toeline reads off bead ${summary.number}`}
      aside={<VerdictBadge verdict={summary.verdict} />}
    >
      <p className={styles.soft}>{summary.setupLine}</p>
      <p>
        {summary.seen.length === 0 ? "Nothing is marked on it yet." : `Marked: ${summary.seen.join(", ")}.`}
      </p>
      {summary.firstChange && (
        <p>
          <strong>Try next:</strong> {summary.firstChange}
        </p>
      )}
      {href && (
        <a className={styles.link} href={href}>
          Open the bead to mark what is there
        </a>
      )}
      <p className={styles.soft}>Acceptance belongs to the governing code and qualified people.</p>
    </Panel>
  );
}
