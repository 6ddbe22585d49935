import { Info } from "lucide-react";
import type { Source } from "@/lib/base";
import { originLines } from "@/lib/report";
import styles from "./causes-panel.module.css";

/** Where something comes from, behind one small sign. */
export function Origins({ sources }: { sources: readonly Source[] }) {
  if (sources.length === 0) return null;
  return (
    <details className={styles.origins}>
      <summary>
        <Info size={18} aria-hidden="true" /> Where this comes from
      </summary>
      <ul>
        {originLines(sources).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </details>
  );
}
