import { Panel, type PanelTone } from "@/components/ui";
import { ParetoChart } from "./pareto-chart";
import type { ParetoLine } from "./trend-links";
import { ParetoTable } from "./trend-tables";
import styles from "./trends.module.css";

/** What happens most, as bars and as a table. */
export function ParetoPanel({
  title,
  tone,
  what,
  lines,
  none,
  note,
}: {
  title: string;
  tone: PanelTone;
  /** Heads the column of names. */
  what: string;
  lines: readonly ParetoLine[];
  /** Said where there are no lines. */
  none: string;
  note: string;
}) {
  return (
    <Panel title={title} tone={tone}>
      {lines.length === 0 ? (
        <p>{none}</p>
      ) : (
        <div className={styles.pair}>
          <ParetoChart lines={lines} label={title} />
          <ParetoTable lines={lines} caption={title} what={what} />
        </div>
      )}
      <p className={styles.note}>{note}</p>
    </Panel>
  );
}
