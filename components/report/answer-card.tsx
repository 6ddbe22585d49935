import type { ReactNode } from "react";
import { expectLine, type AnswerWords } from "@/lib/report";
import styles from "./answer-card.module.css";

/**
 * The answer in one block: what to change and how far, because of what and how sure, what to expect. On the screen it fits
 * one phone; on paper it is the framed part of the sheet. What can be done with it stands below, as children.
 */
export function AnswerCard({
  answer,
  look,
  children,
}: {
  answer: AnswerWords;
  look: "screen" | "paper";
  children?: ReactNode;
}) {
  const Heading = look === "paper" ? "h2" : "h3";
  const { sentence, step, cause, sure, reasons } = answer;
  return (
    <section className={`${styles.card} ${styles[look]}`} data-testid="first-change">
      <Heading>Change this one thing</Heading>
      <p className={styles.sentence}>{sentence}</p>
      {step !== "" && <p className={styles.step}>{step}</p>}
      <div className={styles.grounds}>
        <p>
          Because of: <strong>{cause}</strong> <span className={styles.sure}>{sure}</span>
        </p>
        <ul>
          {reasons.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </div>
      {answer.expect !== "" && <p className={styles.expect}>{expectLine(answer)}</p>}
      {children}
    </section>
  );
}
