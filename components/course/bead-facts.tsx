import { VerdictBadge } from "@/components/beads";
import { page, Panel } from "@/components/ui";
import type { BeadSummary } from "@/lib/report";

/** What Toeline itself says of the bead, from what was marked and recorded. */
export function BeadFacts({ summary, href }: { summary: BeadSummary; href?: string }) {
  return (
    <Panel
      title={`What Toeline reads off bead ${summary.number}`}
      aside={<VerdictBadge verdict={summary.verdict} />}
    >
      <p className={page.note}>{summary.setupLine}</p>
      <p>
        {summary.seen.length === 0 ? "Nothing is marked on it yet." : `Marked: ${summary.seen.join(", ")}.`}
      </p>
      {summary.firstChange && (
        <p>
          <strong>Try next:</strong> {summary.firstChange}
        </p>
      )}
      {href && (
        <a className={page.link} href={href}>
          Open the bead to mark what is there
        </a>
      )}
      <p className={page.note}>Acceptance belongs to the governing code and qualified people.</p>
    </Panel>
  );
}
