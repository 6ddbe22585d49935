import { Panel } from "@/components/ui";
import { changeSentence, shareText, signalLines, type FigureChart, type Period } from "@/lib/trends";
import { RejectChart } from "./reject-chart";
import type { RejectPoint } from "./trend-links";
import { RejectTable } from "./trend-tables";
import styles from "./trends.module.css";

/** The control chart with what asks for a reason, its table and what its limits rest on. */
export function RejectPanel({
  chart,
  lines,
  period,
}: {
  chart: FigureChart;
  /** The chart's points with the way to their beads. */
  lines: readonly RejectPoint[];
  period: Period;
}) {
  const { centre, trialLimits, skipped } = chart;
  const signals = signalLines(chart);
  const change = changeSentence(chart.points);
  return (
    <Panel title="Rejects over time" tone="straw">
      {change && (
        <p>
          <strong>{change}</strong>
        </p>
      )}
      {signals.length > 0 && (
        <ul className={styles.signals}>
          {signals.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
      <div className={styles.pair}>
        <RejectChart points={lines} centre={centre.value ?? 0} />
        <RejectTable points={lines} />
      </div>
      <p className={styles.note}>
        All together: {shareText(centre)}. Limits: centre ± 3 √(p̄ (1 − p̄) / n) for each {period}’s own number
        of beads (p-chart, NIST/SEMATECH e-Handbook 6.3.3.2). Whether the last {period} differs from the one
        before it is said only where the interval of the difference (Newcombe 1998, method 10) leaves out
        nought.
        {trialLimits && " Fewer than 20 points: trial limits, to be drawn again as the record grows."}
        {skipped.length > 0 && ` Without a decided verdict: ${skipped.join(", ")}.`}
      </p>
    </Panel>
  );
}
