"use client";

import { useCallback, useEffect, useRef, useState } from "react";
import type { BeadContent } from "@/lib/assess";

export type SaveState =
  | { readonly kind: "saved" }
  | { readonly kind: "saving" }
  | { readonly kind: "refused"; readonly message: string }
  | { readonly kind: "collided"; readonly message: string };

const QUIET_MS = 500;

/**
 * Saves the whole bead shortly after it was last changed, one save at a time. A save that is refused keeps everything
 * on screen and is tried again with the next change; one that collided with another window waits for the person.
 */
export function useAutosave(beadId: string, firstRevision: number, content: BeadContent) {
  const [state, setState] = useState<SaveState>({ kind: "saved" });
  const revision = useRef(firstRevision);
  const latest = useRef(content);
  const sent = useRef(content);
  const busy = useRef(false);
  const collided = useRef(false);
  const adopt = useRef(false);

  const flush = useCallback(async () => {
    if (busy.current || collided.current) return;
    busy.current = true;
    while (sent.current !== latest.current && !collided.current) {
      const sending = latest.current;
      setState({ kind: "saving" });
      const answer = await putBead(beadId, revision.current, sending);
      if (answer.kind !== "saved") {
        collided.current = answer.kind === "collided";
        setState(answer);
        break;
      }
      revision.current = answer.revision;
      sent.current = sending;
      if (sent.current === latest.current) setState({ kind: "saved" });
    }
    busy.current = false;
  }, [beadId]);

  useEffect(() => {
    if (latest.current === content) return;
    latest.current = content;
    if (adopt.current) {
      adopt.current = false;
      sent.current = content;
      return;
    }
    const timer = setTimeout(() => void flush(), QUIET_MS);
    return () => clearTimeout(timer);
  }, [content, flush]);

  useEffect(() => {
    const leaving = () => void flush();
    document.addEventListener("visibilitychange", leaving);
    window.addEventListener("pagehide", leaving);
    return () => {
      document.removeEventListener("visibilitychange", leaving);
      window.removeEventListener("pagehide", leaving);
    };
  }, [flush]);

  /**
   * After the person chose what to keep: go on from the revision that is in the store now. `unchanged` says that what
   * they chose is what the store holds, so that there is nothing to send.
   */
  const resume = useCallback((storedRevision: number, unchanged: boolean) => {
    revision.current = storedRevision;
    collided.current = false;
    adopt.current = unchanged;
    setState({ kind: unchanged ? "saved" : "saving" });
  }, []);

  return { state, flush, resume };
}

type Put = { kind: "saved"; revision: number } | Exclude<SaveState, { kind: "saved" }>;

async function putBead(beadId: string, basedOn: number, content: BeadContent): Promise<Put> {
  const body = JSON.stringify({ basedOn, content });
  try {
    const answer = await fetch(`/api/beads/${beadId}`, {
      method: "PUT",
      headers: { "content-type": "application/json" },
      body,
      // Lets the save outlive a page that is being closed; browsers allow it for small bodies only.
      keepalive: body.length < 60_000,
    });
    const json = (await answer.json()) as { revision?: number; issues?: { message: string }[] };
    if (answer.ok && json.revision !== undefined) return { kind: "saved", revision: json.revision };
    const message = json.issues?.[0]?.message ?? "This change could not be saved. It stays on this screen.";
    return { kind: answer.status === 409 ? "collided" : "refused", message };
  } catch {
    return {
      kind: "refused",
      message: "Toeline does not answer, so this change is only on this screen. Is it still running?",
    };
  }
}
