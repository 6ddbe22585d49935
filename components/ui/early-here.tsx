"use client";

import { useEffect } from "react";
import { takeUp } from "./early";

/** Last in the page: once it runs, React listens everywhere but in what comes later. */
export function EarlyHere() {
  useEffect(() => takeUp(document.documentElement), []);
  return null;
}
