"use client";

import { useState, useTransition } from "react";
import type { FormAnswer } from "@/components/ui";

export type Save = (basedOn: number, content: unknown) => Promise<FormAnswer>;

const unreachable: FormAnswer = {
  done: false,
  text: "Toeline did not answer, so nothing was saved. What you typed stays here; check the connection and try again.",
};

/** Content being edited and saved as a whole; the revision it is based on follows each save. */
export function useSaving<T>(start: T, startRevision: number, save: Save) {
  const [content, setContent] = useState(start);
  const [revision, setRevision] = useState(startRevision);
  const [said, setSaid] = useState<FormAnswer | null>(null);
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
        if (answer.done && answer.once) setRevision(Number(answer.once));
        setSaid({ done: answer.done, text: answer.text });
      }),
  };
}
