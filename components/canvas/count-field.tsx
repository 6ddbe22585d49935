"use client";

import { useId } from "react";
import { Chip, useTypedText } from "@/components/ui";
import { patchPatterns } from "@/lib/accept";
import { countAbout, type Mark, type MarkDescription } from "@/lib/marks";
import { comesInNumbers } from "@/lib/trade";
import styles from "./mark-card.module.css";

/** As people say them who did not count. */
const usual = [5, 10, 20, 50, 100] as const;

/** A whole number from two on; undefined for anything else, which is nothing said. */
export function countTyped(text: string): number | undefined {
  const about = Number(text.trim());
  return text.trim() !== "" && Number.isInteger(about) && about >= 2 && about <= 10_000 ? about : undefined;
}

/** Pores of which nobody said how they lie are judged as one. */
const isOneHole = ({ imperfection, patterns }: Mark): boolean =>
  imperfection === "surface-porosity" && !patterns.some((pattern) => patchPatterns.has(pattern));

/** About how many one mark holds, by eye. Asked only of what comes in numbers. */
export function CountField({
  mark,
  onDescribe,
  readOnly,
}: {
  mark: Mark;
  onDescribe: (about: Partial<MarkDescription>) => void;
  readOnly: boolean;
}) {
  const id = useId();
  const about = countAbout(mark);
  const say = (aboutCount: number | undefined) => onDescribe({ aboutCount });
  const typed = useTypedText(about === null ? "" : String(about), (text) => say(countTyped(text)));
  if (!comesInNumbers(mark.imperfection)) return null;
  return (
    <div role="group" aria-labelledby={`${id}-name`} className={styles.choice} data-testid="count-field">
      <p id={`${id}-name`} className={styles.label}>
        About how many? <span className={styles.hint}>By eye, where one mark stands for a patch.</span>
      </p>
      <div className={styles.chips}>
        {usual.map((count) => (
          <Chip
            key={count}
            on={about === count}
            disabled={readOnly}
            onClick={() => say(about === count ? undefined : count)}
          >
            {count}
          </Chip>
        ))}
        <input
          className={styles.count}
          aria-label="Another number, about"
          inputMode="numeric"
          maxLength={5}
          readOnly={readOnly}
          {...typed}
          onChange={(event) => typed.onChange(event.target.value)}
        />
      </div>
      {about !== null && (
        <p className={styles.hint} role="note">
          A guess: no size and no sum is judged from it.
          {isOneHole(mark) && " Say below how they lie: until then this is judged as one hole."}
        </p>
      )}
    </div>
  );
}
