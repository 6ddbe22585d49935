import { Undo2 } from "lucide-react";
import { Button } from "@/components/ui";
import { answeredWords } from "@/lib/diagnose";
import styles from "./causes-panel.module.css";

/** What was answered so far, the last on top, each to be taken back. */
export function GivenAnswers({
  answers,
  onForget,
}: {
  answers: Readonly<Record<string, string>>;
  onForget: (questionId: string) => void;
}) {
  const given = answeredWords(answers).toReversed();
  if (given.length === 0) return null;
  return (
    <section className={styles.given} aria-label="Answered">
      <h3>Answered</h3>
      <ul>
        {given.map(({ id, question, answer }) => (
          <li key={id} data-answered={id}>
            <span>
              {question} <strong>{answer}</strong>
            </span>
            <Button aria-label={`Take back: ${question}`} onClick={() => onForget(id)}>
              <Undo2 size={20} aria-hidden="true" /> Take back
            </Button>
          </li>
        ))}
      </ul>
    </section>
  );
}
