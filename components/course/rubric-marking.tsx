"use client";

import { Chip } from "@/components/ui";
import {
  rubricScore,
  rubricSteps,
  scoreText,
  stepWords,
  type RubricLine,
  type RubricMarks,
} from "@/lib/course";
import styles from "./rubric.module.css";

/** Each line of the rubric with its steps; pressed again, a step is taken back. */
export function RubricMarking({
  lines,
  marks,
  onChange,
}: {
  lines: readonly RubricLine[];
  marks: RubricMarks;
  onChange: (marks: RubricMarks) => void;
}) {
  const set = (id: string, mark: RubricMarks[string]) => {
    const { [id]: before, ...others } = marks;
    onChange(before === mark ? others : { ...others, [id]: mark });
  };
  return (
    <div className={styles.lines}>
      {lines.map(({ id, title, weight }) => (
        <fieldset key={id} className={styles.line}>
          <legend>
            {title} <small>weight {weight}</small>
          </legend>
          <div className={styles.steps}>
            {rubricSteps.map((step) => (
              <Chip
                key={step}
                on={marks[id] === step}
                aria-label={`${title}: ${step} of 4, ${stepWords[step]}`}
                title={stepWords[step]}
                onClick={() => set(id, step)}
              >
                {step}
              </Chip>
            ))}
            <Chip
              on={marks[id] === "left-out"}
              aria-label={`${title}: does not apply`}
              onClick={() => set(id, "left-out")}
            >
              does not apply
            </Chip>
          </div>
        </fieldset>
      ))}
      <p className={styles.score} data-testid="score">
        {scoreText(rubricScore(lines, marks))}
      </p>
    </div>
  );
}
