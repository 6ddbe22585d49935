import { CircleCheck, CircleHelp, CircleX } from "lucide-react";
import { verdictWords } from "@/lib/report";
import styles from "./verdict-badge.module.css";

export type VerdictWord = keyof typeof verdictWords;

/** Told by icon and word, not by colour alone. */
export function VerdictBadge({ verdict }: { verdict: VerdictWord | null }) {
  if (verdict === null) return <span className={`${styles.badge} ${styles.none}`}>No criteria chosen</span>;
  const Icon = verdict === "accept" ? CircleCheck : verdict === "reject" ? CircleX : CircleHelp;
  return (
    <span className={`${styles.badge} ${styles[verdict]}`}>
      <Icon size={18} aria-hidden="true" /> {verdictWords[verdict].short}
    </span>
  );
}
