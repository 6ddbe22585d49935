"use client";

import { useEffect, useEffectEvent, type RefObject } from "react";
import type { Point } from "@/lib/geometry";

/** CSS pixels of a "line", the unit some mice count in. */
const LINE = 16;

/** The wheel zooms about the pointer; `at` is in CSS pixels of the element. The page does not scroll under it. */
export function useWheel(
  box: RefObject<HTMLElement | null>,
  onZoom: (factor: number, at: Point<"view">) => void,
) {
  const onWheel = useEffectEvent((event: WheelEvent, element: HTMLElement) => {
    event.preventDefault();
    const lines = event.deltaMode === 1 ? LINE : 1;
    // A trackpad's pinch arrives as a wheel with Ctrl and small steps.
    onZoom(Math.exp(-event.deltaY * lines * (event.ctrlKey ? 0.01 : 0.0018)), placeIn(element, event));
  });
  useEffect(() => {
    const element = box.current;
    if (!element) return undefined;
    const listen = (event: WheelEvent) => onWheel(event, element);
    element.addEventListener("wheel", listen, { passive: false });
    return () => element.removeEventListener("wheel", listen);
  }, [box]);
}

/** Where an event happened, CSS pixels from the element's top left corner. */
export function placeIn(
  element: HTMLElement | null,
  event: { clientX: number; clientY: number },
): Point<"view"> {
  const rect = element?.getBoundingClientRect();
  return { x: event.clientX - (rect?.left ?? 0), y: event.clientY - (rect?.top ?? 0) };
}
