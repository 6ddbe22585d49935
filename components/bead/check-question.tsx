import { Button } from "@/components/ui";
import type { Check } from "@/lib/diagnose";
import styles from "./causes-panel.module.css";

/** One thing to find out: the question, how, and its answers, each one press. */
export function CheckQuestion({
  check: { id, question, how, answers },
  gain = "",
  onAnswer,
}: {
  check: Pick<Check, "id" | "question" | "how" | "answers">;
  /** What answering it would bring. */
  gain?: string;
  onAnswer: (answerId: string) => void;
}) {
  return (
    <div className={styles.check} data-check={id} role="group" aria-label={question}>
      <p className={styles.question}>
        {question} {gain && <span className={styles.gain}>{gain}</span>}
      </p>
      <p className={styles.how}>{how}</p>
      <div className={styles.answers}>
        {answers.map((answer) => (
          <Button key={answer.id} onClick={() => onAnswer(answer.id)}>
            {answer.text}
          </Button>
        ))}
      </div>
    </div>
  );
}
