"use client";

import { useEffect, useState } from "react";

/** Latest moment for it even when the browser stays busy, ms. */
const LATEST_MS = 250;

/**
 * A value too dear for the frame in which its subject changed: read after that frame has been painted, when the browser
 * has time. Until then the value of the subject before stands; null before the first. `read` must depend on `subject`
 * alone. Nothing is read while it is not wanted. With `atOnce` the first value is there from the start: for a part of
 * the screen that has just been opened, where nothing is drawn that could be held up.
 */
export function useInIdle<T>(subject: object, wanted: boolean, read: () => T, atOnce = false): T | null {
  const [known, setKnown] = useState<{ readonly value: T } | null>(() =>
    atOnce && wanted ? { value: read() } : null,
  );
  useEffect(() => {
    if (!wanted) return undefined;
    return whenIdle(() => {
      const value = read();
      setKnown((before) => (before !== null && before.value === value ? before : { value }));
    });
    // eslint-disable-next-line react-hooks/exhaustive-deps -- `read` follows from the subject
  }, [subject, wanted]);
  return known === null ? null : known.value;
}

/** Returns how to call it off. Browsers without idle callbacks get the next task after a paint. */
function whenIdle(run: () => void): () => void {
  if (typeof window.requestIdleCallback === "function") {
    const id = window.requestIdleCallback(run, { timeout: LATEST_MS });
    return () => window.cancelIdleCallback(id);
  }
  const id = window.setTimeout(run, 32);
  return () => window.clearTimeout(id);
}
