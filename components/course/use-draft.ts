import { useCallback, useEffect, useRef, useState } from "react";
import { inWords, refused, type Answer } from "@/lib/base";
import type { FeedbackContent } from "@/lib/course";

export type DraftState =
  | { readonly kind: "saved" }
  | { readonly kind: "saving" }
  | { readonly kind: "refused"; readonly message: string };

export type SaveDraft = (
  basedOn: number,
  content: FeedbackContent,
) => Promise<Answer<{ readonly revision: number }>>;

const QUIET_MS = 500;

/**
 * Saves the draft shortly after its last change, one save at a time. A refused save keeps everything on screen and is
 * tried again with the next change. `flush` resolves to the saved revision, or null when something was refused.
 */
export function useDraft(first: number, content: FeedbackContent, save: SaveDraft) {
  const [state, setState] = useState<DraftState>({ kind: "saved" });
  const revision = useRef(first);
  const latest = useRef(content);
  const sent = useRef(content);
  const running = useRef<Promise<number | null> | null>(null);

  const run = useCallback(async (): Promise<number | null> => {
    while (sent.current !== latest.current) {
      const sending = latest.current;
      setState({ kind: "saving" });
      const answer = await save(revision.current, sending).catch(() => unreachable);
      if (!answer.ok) {
        setState({ kind: "refused", message: inWords(answer) });
        return null;
      }
      revision.current = answer.value.revision;
      sent.current = sending;
    }
    setState({ kind: "saved" });
    return revision.current;
  }, [save]);

  const flush = useCallback((): Promise<number | null> => {
    running.current ??= run().finally(() => {
      running.current = null;
    });
    return running.current;
  }, [run]);

  useEffect(() => {
    if (latest.current === content) return;
    latest.current = content;
    const timer = setTimeout(() => void flush(), QUIET_MS);
    return () => clearTimeout(timer);
  }, [content, flush]);

  useEffect(() => {
    const leaving = () => void flush();
    document.addEventListener("visibilitychange", leaving);
    return () => document.removeEventListener("visibilitychange", leaving);
  }, [flush]);

  return { state, flush };
}

const unreachable = refused(
  "unreachable",
  "Toeline did not answer, so the last change is not saved yet. It stays on this screen and is sent with the next one.",
);
