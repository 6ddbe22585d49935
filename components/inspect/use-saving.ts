"use client";

import { useState, useTransition } from "react";
import { refused, type Answer } from "@/lib/base";
import type { Said } from "@/components/ui";

export type Save = (basedOn: number, content: unknown) => Promise<Answer<Saved>>;

/** The revision that the next save is based on, and what to tell. */
export interface Saved extends Said {
  readonly revision: number;
}

const unreachable = refused(
  "unreachable",
  "Toeline did not answer, so nothing was saved. What you typed stays here; check the connection and try again.",
);

/** Content being edited and saved as a whole; the revision it is based on follows each save. */
export function useSaving<T>(start: T, startRevision: number, save: Save) {
  const [content, setContent] = useState(start);
  const [revision, setRevision] = useState(startRevision);
  const [said, setSaid] = useState<Answer<Said> | null>(null);
  const [pending, run] = useTransition();
  return {
    content,
    said,
    pending,
    change: (part: Partial<T>) => {
      setContent((before) => ({ ...before, ...part }));
      setSaid(null);
    },
    submit: () =>
      run(async () => {
        const answer = await save(revision, content).catch(() => unreachable);
        if (answer.ok) setRevision(answer.value.revision);
        setSaid(answer);
      }),
  };
}
