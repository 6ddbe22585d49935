"use client";

import { useEffect, useSyncExternalStore } from "react";
import type { Later } from "./later";

/** The code once it is here; null until then, and on the server. Whoever uses it has it brought at rest. */
export function useLater<T>(code: Later<T>): T | null {
  useEffect(() => code.loadAtRest(), [code]);
  return useSyncExternalStore(code.subscribe, code.now, () => null);
}
