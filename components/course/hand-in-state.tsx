import Link from "next/link";
import { VerdictBadge, type VerdictWord } from "@/components/beads";
import styles from "./course.module.css";

export interface ShownHandIn {
  readonly id: string;
  readonly student: string | null;
  readonly exerciseTitle: string;
  readonly late: boolean;
  readonly feedback: { readonly returnedAt: string | null; readonly repliedAt: string | null } | null;
}

const stateOf = ({ feedback }: ShownHandIn) => {
  if (feedback?.repliedAt) return { word: "replied", tone: styles.good };
  if (feedback?.returnedAt) return { word: "returned", tone: styles.good };
  return feedback ? { word: "draft", tone: styles.wait } : { word: "waiting", tone: styles.wait };
};

/** One hand-in in a list: whose, when, and how far its answer is. */
export function HandInState({
  handIn,
  verdict,
  day,
  withExercise = false,
}: {
  handIn: ShownHandIn;
  verdict: VerdictWord | null;
  day: string;
  withExercise?: boolean;
}) {
  const { word, tone } = stateOf(handIn);
  return (
    <li className={styles.item}>
      <Link className={styles.link} href={`/feedback/${handIn.id}`}>
        {handIn.student ?? "Name removed"}
        {withExercise && `, ${handIn.exerciseTitle}`}
      </Link>
      <span className={styles.soft}>
        {day}
        {handIn.late && " · late"}
      </span>
      <span className={`${styles.tag} ${tone}`}>{word}</span>
      {verdict && <VerdictBadge verdict={verdict} />}
    </li>
  );
}
