"use client";

import { useEffect } from "react";

/** Tells once that the answer is on the student's screen. A page that was only fetched ahead tells nothing. */
export function Seen({ tell }: { tell: () => Promise<unknown> }) {
  useEffect(() => {
    // Not told today is told at the next look.
    void tell().catch(() => undefined);
  }, [tell]);
  return null;
}
