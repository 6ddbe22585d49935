import { CircleCheck, CircleHelp, CircleX } from "lucide-react";
import styles from "./verdict-badge.module.css";

export type VerdictWord = "accept" | "reject" | "cannot-say";

export const verdictWords: Readonly<Record<VerdictWord, string>> = {
  accept: "Meets the criteria",
  reject: "Does not meet",
  "cannot-say": "Cannot say yet",
};

/** Told by icon and word, not by colour alone. */
export function VerdictBadge({ verdict }: { verdict: VerdictWord | null }) {
  if (verdict === null) return <span className={`${styles.badge} ${styles.none}`}>No criteria chosen</span>;
  const Icon = verdict === "accept" ? CircleCheck : verdict === "reject" ? CircleX : CircleHelp;
  return (
    <span className={`${styles.badge} ${styles[verdict]}`}>
      <Icon size={18} aria-hidden="true" /> {verdictWords[verdict]}
    </span>
  );
}
