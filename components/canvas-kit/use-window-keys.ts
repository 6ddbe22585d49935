"use client";

import { useEffect, useEffectEvent } from "react";

/** Where letters are written, or keys mean something else. */
const TAKEN = "input, textarea, select, [contenteditable], [role=dialog], [role=menu], [role=listbox]";

/** Whether a key pressed there belongs to a field, or to something that lies over the page. */
export function isTaken(target: Pick<Element, "closest"> | null, isCovered: boolean): boolean {
  return isCovered || (target?.closest(TAKEN) ?? null) !== null;
}

/**
 * Keys of a page, wherever the focus is: told of each that no field has, that nothing lying over the page has, and that nobody
 * has answered yet.
 */
export function useWindowKeys(hear: (event: KeyboardEvent) => void): void {
  const tell = useEffectEvent(hear);
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      const target = event.target instanceof Element ? event.target : null;
      const isCovered = document.querySelector("[role=dialog]") !== null;
      if (!event.defaultPrevented && !isTaken(target, isCovered)) tell(event);
    };
    addEventListener("keydown", onKeyDown);
    return () => removeEventListener("keydown", onKeyDown);
  }, []);
}
