"use client";

import { useEffect } from "react";

const QUESTION = "Something on this page is not saved yet. Leave it all the same?";

/** Asks before the page is left while something on it is not saved: by closing, reloading, or a link. */
export function useWarnWhenLeaving(isUnsaved: boolean): void {
  useEffect(() => {
    if (!isUnsaved) return;
    const closing = (event: BeforeUnloadEvent) => event.preventDefault();
    // A link within Toeline loads no page, so the browser asks nothing by itself.
    const following = (event: MouseEvent) => {
      const link = event.target instanceof Element ? event.target.closest("a[href]") : null;
      if (!link || link.getAttribute("target") === "_blank" || link.hasAttribute("download")) return;
      if (link.getAttribute("href")?.startsWith("#") || window.confirm(QUESTION)) return;
      event.preventDefault();
      event.stopPropagation();
    };
    window.addEventListener("beforeunload", closing);
    document.addEventListener("click", following, true);
    return () => {
      window.removeEventListener("beforeunload", closing);
      document.removeEventListener("click", following, true);
    };
  }, [isUnsaved]);
}
