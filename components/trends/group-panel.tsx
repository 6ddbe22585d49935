import { Panel } from "@/components/ui";
import type { GroupLine } from "./trend-links";
import { GroupTable } from "./trend-tables";
import styles from "./trends.module.css";

/** Groups side by side, with the interval of each. */
export function GroupPanel({ label, lines }: { label: string; lines: readonly GroupLine[] }) {
  return (
    <Panel title={`By ${label.toLowerCase()}`} tone="bronze">
      <GroupTable lines={lines} what={label} />
      <p className={styles.note}>
        Where two bars overlap widely, the difference may be chance. The mark is what was counted, the bar its
        95 % interval (Wilson).
      </p>
    </Panel>
  );
}
