"use client";

import { useEffect, useSyncExternalStore } from "react";
import { onTold, showNotice, toldHere, type Came } from "./notices";

/** How often a page that is open asks what came, ms. */
const EVERY_MS = 30_000;

const nobody = (): string => "";

/** Tells of what came for this person while a page is open, where they switched that on and the browser lets us. */
export function NoticeHere({ personId }: { personId: string }) {
  const isTold = useSyncExternalStore(onTold, toldHere, nobody) === personId;
  useEffect(() => {
    if (!isTold || typeof Notification === "undefined") return;
    let since: string | null = null;
    const ask = async () => {
      if (Notification.permission !== "granted") return;
      const found = await newsSince(since);
      if (!found) return;
      since = found.until;
      for (const came of found.news) await showNotice(came);
    };
    void ask();
    const timer = setInterval(() => void ask(), EVERY_MS);
    return () => clearInterval(timer);
  }, [isTold]);
  return null;
}

/** What came, and up to when; null where Toeline did not answer: the next time asks from the same moment on. */
async function newsSince(
  since: string | null,
): Promise<{ readonly news: readonly Came[]; readonly until: string } | null> {
  try {
    const answer = await fetch(`/api/news${since ? `?since=${encodeURIComponent(since)}` : ""}`);
    return answer.ok ? ((await answer.json()) as { news: readonly Came[]; until: string }) : null;
  } catch {
    return null;
  }
}
