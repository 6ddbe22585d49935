"use client";

import { useState } from "react";
import { Button } from "@/components/ui";
import { inWords, type Answer } from "@/lib/base";
import { refusalOf, type SaveState, type Stored } from "./saver";
import styles from "./collision-notice.module.css";

export interface Choice<S> {
  readonly label: string;
  readonly choose: (stored: S) => void;
}

/**
 * Shown while a collision waits for the person to say which version to keep; the first choice is the kindest. With
 * `onRetry` a refused save is shown as well, until one was taken: it must not come and go with each try.
 */
export function CollisionNotice<S extends Stored<unknown>>({
  state,
  readStored,
  choices,
  onRetry,
  className = "",
}: {
  state: SaveState;
  /** The version that is in the store now. */
  readStored: () => Promise<Answer<S>>;
  choices: readonly Choice<S>[];
  onRetry?: () => void;
  className?: string | undefined;
}) {
  const [problem, setProblem] = useState<string | null>(null);
  const refusal = refusalOf(state);
  const isCollided = state.kind === "collided";
  if (!refusal || !(isCollided || onRetry)) return null;
  const settle = async ({ choose }: Choice<S>) => {
    const stored = await readStored().catch(() => null);
    if (stored?.ok) choose(stored.value);
    setProblem(stored?.ok ? null : stored ? inWords(stored) : unreadable);
  };
  return (
    <div className={`${styles.notice} ${className}`} role="alert">
      <p>{inWords(refusal)}</p>
      {problem && <p>{problem}</p>}
      <div className={styles.choices}>
        {!isCollided && <Button onClick={onRetry}>Try again now</Button>}
        {isCollided &&
          choices.map((choice, i) => (
            <Button key={choice.label} tone={i === 0 ? "main" : "plain"} onClick={() => void settle(choice)}>
              {choice.label}
            </Button>
          ))}
      </div>
    </div>
  );
}

const unreadable = "The other version could not be read. Is Toeline still running?";
