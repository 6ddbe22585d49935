"use client";

import { useLayoutEffect } from "react";
import { onLook, showLook } from "./look";

/**
 * Keeps the page in the look that is chosen, from the first painting on. Where a page has to be made anew in the browser
 * (nothing is at this address), the script of its head did not run: so it is set here as well.
 */
export function LookHere() {
  useLayoutEffect(() => {
    showLook();
    return onLook(showLook);
  }, []);
  return null;
}
