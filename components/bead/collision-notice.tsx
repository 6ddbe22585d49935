"use client";

import { useState } from "react";
import { Button } from "@/components/ui";
import { mergeContent, type BeadContent, type PhotoFacts } from "@/lib/assess";
import type { useAutosave } from "./use-autosave";
import { startWork, type WorkState } from "./work-state";
import styles from "./collision-notice.module.css";

interface Stored {
  readonly revision: number;
  readonly content: BeadContent;
  readonly photos: readonly PhotoFacts[];
}

/** Shown when a save was refused. A collision waits here until the person has said which version to keep. */
export function CollisionNotice({
  beadId,
  save,
  content,
  onReplace,
}: {
  beadId: string;
  save: ReturnType<typeof useAutosave>;
  content: BeadContent;
  onReplace: (state: WorkState) => void;
}) {
  const [problem, setProblem] = useState<string | null>(null);
  const { state } = save;
  if (state.kind !== "refused" && state.kind !== "collided") return null;

  async function settle(choose: (theirs: BeadContent) => BeadContent, unchanged: boolean) {
    const stored = await readStored(beadId);
    if (!stored) return setProblem("The other version could not be read. Is Toeline still running?");
    const next = startWork(choose(stored.content), stored.photos);
    onReplace(next);
    save.resume(stored.revision, unchanged);
  }

  return (
    <div className={styles.notice} role="alert">
      <p>{state.message}</p>
      {problem && <p>{problem}</p>}
      {state.kind === "refused" && <Button onClick={() => void save.flush()}>Try again now</Button>}
      {state.kind === "collided" && (
        <div className={styles.choices}>
          <Button tone="main" onClick={() => void settle((theirs) => mergeContent(content, theirs), false)}>
            Keep both: all marks of both, my settings
          </Button>
          <Button onClick={() => void settle(() => content, false)}>Keep mine</Button>
          <Button onClick={() => void settle((theirs) => theirs, true)}>Take the other one</Button>
        </div>
      )}
    </div>
  );
}

async function readStored(beadId: string): Promise<Stored | null> {
  try {
    const answer = await fetch(`/api/beads/${beadId}`);
    return answer.ok ? ((await answer.json()) as Stored) : null;
  } catch {
    return null;
  }
}
