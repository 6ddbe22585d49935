"use client";

import { useState } from "react";
import { Button } from "@/components/ui";
import { inWords, type Answer } from "@/lib/base";
import type { SaveState, Stored } from "./saver";
import styles from "./collision-notice.module.css";

export interface Choice<S> {
  readonly label: string;
  readonly choose: (stored: S) => void;
}

/**
 * Shown while a collision waits for the person to say which version to keep; the first choice is the kindest. With
 * `onRetry` a refused save is shown as well.
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
  const isShown = state.kind === "collided" || (state.kind === "refused" && onRetry !== undefined);
  if (!isShown) return null;
  const settle = async ({ choose }: Choice<S>) => {
    const stored = await readStored().catch(() => null);
    if (stored?.ok) choose(stored.value);
    setProblem(stored?.ok ? null : stored ? inWords(stored) : unreadable);
  };
  return (
    <div className={`${styles.notice} ${className}`} role="alert">
      <p>{inWords(state.refusal)}</p>
      {problem && <p>{problem}</p>}
      <div className={styles.choices}>
        {state.kind === "refused" && <Button onClick={onRetry}>Try again now</Button>}
        {state.kind === "collided" &&
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
