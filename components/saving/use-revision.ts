"use client";

import { useCallback, useEffect, useRef, useState, useSyncExternalStore } from "react";
import type { Refusal } from "@/lib/base";
import { retryAfterMs } from "./retry";
import { isAway, Saver, type Save, type Saved, type SaveState } from "./saver";

/** How long the hands must rest before what they did is saved. */
const QUIET_MS = 500;

const unreachable = {
  auto: "Toeline did not answer, so the last change is only on this screen. It is sent as soon as it answers again.",
  asked:
    "Toeline did not answer, so nothing was saved. What you typed stays here; check the connection and try again.",
} as const;

type When = "auto" | "asked";

/** Every screen in this window that saves by itself. */
const selfSaving = new Set<() => Promise<number | null>>();

/** Sends what any of them has not sent yet; done when all of it was answered. Before another page reads the store. */
export async function flushAll(): Promise<void> {
  await Promise.all([...selfSaving].map((flush) => flush()));
}

/** Saving as a screen holds it in its hands. */
export interface Revision<V extends Saved> {
  readonly state: SaveState<V>;
  /** Sends what is not sent yet; the revision after it, null where it was refused. */
  readonly flush: () => Promise<number | null>;
  readonly send: () => Promise<number | null>;
  /** Somebody else's answer told of a collision. */
  readonly collide: (refusal: Refusal) => void;
  /** The screen shows the stored version now: nothing to send. */
  readonly takeStored: (stored: Saved) => void;
  /** What is on the screen goes over the stored version, shortly, so that the screen can change first. */
  readonly keepOwn: (stored: Saved) => void;
}

/**
 * The one way a screen saves at a revision. `auto` saves shortly after each change and when the page is left; `asked`
 * saves at `send`.
 *
 * @param revision The one the page was read at.
 * @param content What is on the screen now: a new object after each change.
 */
export function useRevision<C, V extends Saved>(
  when: When,
  revision: number,
  content: C,
  save: Save<C, V>,
): Revision<V> & {
  /** For whoever keeps the work beyond this window; the same one as long as the screen is shown. */
  readonly saver: Saver<C, V>;
} {
  const saving = useRef(save);
  const [saver] = useState(
    () =>
      new Saver<C, V>(revision, content, (basedOn, one) => saving.current(basedOn, one), unreachable[when]),
  );
  const state = useSyncExternalStore(saver.subscribe, saver.state, saver.state);
  const { flush, send, collide } = saver;

  useEffect(() => {
    saving.current = save;
  }, [save]);

  useEffect(() => {
    if (!saver.change(content) || when === "asked") return;
    const timer = setTimeout(() => void flush(), QUIET_MS);
    return () => clearTimeout(timer);
  }, [saver, flush, content, when]);
  useFlushWhenLeaving(flush, when);
  useRetry(state, flush, when);

  const takeStored = useCallback((stored: Saved) => saver.settle(stored.revision, true), [saver]);
  const keepOwn = useCallback(
    (stored: Saved) => {
      saver.settle(stored.revision, false);
      setTimeout(() => void (when === "auto" ? flush() : send()), QUIET_MS);
    },
    [saver, flush, send, when],
  );
  return { state, flush, send, collide, takeStored, keepOwn, saver };
}

/** What was changed last is sent before the page is gone. */
function useFlushWhenLeaving(flush: () => Promise<number | null>, when: When): void {
  useEffect(() => {
    if (when === "asked") return;
    selfSaving.add(flush);
    const leaving = () => void flush();
    document.addEventListener("visibilitychange", leaving);
    window.addEventListener("pagehide", leaving);
    return () => {
      document.removeEventListener("visibilitychange", leaving);
      window.removeEventListener("pagehide", leaving);
      selfSaving.delete(flush);
      // A link within Toeline takes the screen away and hides no page.
      leaving();
    };
  }, [flush, when]);
}

/** What got no answer is sent again by itself: after a while, and at once when the network comes back. */
function useRetry(state: SaveState, flush: () => Promise<unknown>, when: When): void {
  const failures = useRef(0);
  useEffect(() => {
    if (state.kind === "saved") failures.current = 0;
    if (when === "asked" || state.kind !== "refused" || !isAway(state.refusal)) return;
    const again = () => void flush();
    const timer = setTimeout(again, retryAfterMs(failures.current, Math.random()));
    failures.current += 1;
    window.addEventListener("online", again);
    return () => {
      clearTimeout(timer);
      window.removeEventListener("online", again);
    };
  }, [state, flush, when]);
}
