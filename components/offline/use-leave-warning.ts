"use client";

import { useEffect } from "react";

/** The browser asks before the page is left while something has not been sent. It words the question itself. */
export function useLeaveWarning(isUnsent: boolean): void {
  useEffect(() => {
    if (!isUnsent) return;
    const ask = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener("beforeunload", ask);
    return () => window.removeEventListener("beforeunload", ask);
  }, [isUnsent]);
}
