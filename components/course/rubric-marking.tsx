"use client";

import { Chip } from "@/components/ui";
import { rubricSteps, stepWords, type RubricLine, type RubricMarks } from "@/lib/course";
import styles from "./rubric.module.css";

/** Each line of the rubric with its steps; pressed again, a step is taken back. */
export function RubricMarking({
  lines,
  marks,
  onChange,
  keyed = false,
}: {
  lines: readonly RubricLine[];
  marks: RubricMarks;
  onChange: (marks: RubricMarks) => void;
  /** Each line goes by its number, too. */
  keyed?: boolean;
}) {
  const set = (id: string, mark: RubricMarks[string]) => {
    const { [id]: before, ...others } = marks;
    onChange(before === mark ? others : { ...others, [id]: mark });
  };
  return (
    <div className={styles.lines}>
      {lines.map(({ id, title, weight }, i) => (
        <fieldset key={id} className={styles.line}>
          <legend>
            {keyed && i < 9 && <kbd aria-hidden="true">{i + 1} </kbd>}
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
              not here
            </Chip>
          </div>
        </fieldset>
      ))}
    </div>
  );
}
