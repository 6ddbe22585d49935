"use client";

import {
  useEffect,
  useEffectEvent,
  useRef,
  type KeyboardEvent,
  type PointerEvent,
  type RefObject,
} from "react";
import { panPair, wholePair, zoomPair, type PairView, type PanePlace } from "./pair-view";

export type PairHands = ReturnType<typeof usePairHands>;

/** A key moves both by this part of the pane. */
const STEP = 0.08;

const arrows: Readonly<Record<string, PanePlace>> = {
  ArrowLeft: { x: STEP, y: 0 },
  ArrowRight: { x: -STEP, y: 0 },
  ArrowUp: { x: 0, y: STEP },
  ArrowDown: { x: 0, y: -STEP },
};

/** Fingers, mouse, wheel and keys on either pane move both. Places are in widths of the pane. */
export function usePairHands(view: PairView, onView: (view: PairView) => void, height: number) {
  const down = useRef(new Map<number, PanePlace>());
  const lift = ({ pointerId }: PointerEvent) => void down.current.delete(pointerId);
  return {
    onWheel: (event: WheelEvent, pane: Element) => {
      event.preventDefault();
      onView(zoomPair(view, Math.exp(-event.deltaY * 0.0018), placeOf(pane, event), height));
    },
    listeners: {
      onPointerDown: (event: PointerEvent<HTMLElement>) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        down.current.set(event.pointerId, placeOf(event.currentTarget, event));
      },
      onPointerMove: (event: PointerEvent<HTMLElement>) => {
        const was = down.current.get(event.pointerId);
        if (!was) return;
        const to = placeOf(event.currentTarget, event);
        const other = [...down.current].find(([id]) => id !== event.pointerId)?.[1] ?? null;
        down.current.set(event.pointerId, to);
        onView(moved(view, { was, to, other }, height));
      },
      onPointerUp: lift,
      onPointerCancel: lift,
      onKeyDown: (event: KeyboardEvent) => {
        const next = byKey(event.key, view, height);
        if (next === null) return;
        event.preventDefault();
        onView(next);
      },
    },
  };
}

/** The page must not scroll under a wheel that zooms, and only a listener of our own may say so. */
export function useWheelOn(pane: RefObject<HTMLElement | null>, onWheel: PairHands["onWheel"]): void {
  const turned = useEffectEvent(onWheel);
  useEffect(() => {
    const element = pane.current;
    if (!element) return undefined;
    const listen = (event: WheelEvent) => turned(event, element);
    element.addEventListener("wheel", listen, { passive: false });
    return () => element.removeEventListener("wheel", listen);
  }, [pane]);
}

function placeOf(pane: Element, event: { clientX: number; clientY: number }): PanePlace {
  const { left, top, width } = pane.getBoundingClientRect();
  return { x: (event.clientX - left) / width, y: (event.clientY - top) / width };
}

/** One finger moves; two move with their middle and zoom with their distance. */
function moved(
  view: PairView,
  { was, to, other }: { readonly was: PanePlace; readonly to: PanePlace; readonly other: PanePlace | null },
  height: number,
): PairView {
  if (!other) return panPair(view, { x: to.x - was.x, y: to.y - was.y }, height);
  const middle = { x: (to.x + other.x) / 2, y: (to.y + other.y) / 2 };
  const shifted = panPair(view, { x: (to.x - was.x) / 2, y: (to.y - was.y) / 2 }, height);
  return zoomPair(shifted, apart(to, other) / Math.max(0.01, apart(was, other)), middle, height);
}

const apart = (a: PanePlace, b: PanePlace): number => Math.hypot(a.x - b.x, a.y - b.y);

function byKey(key: string, view: PairView, height: number): PairView | null {
  const middle = { x: 0.5, y: height / 2 };
  if (key === "+" || key === "=") return zoomPair(view, 1.6, middle, height);
  if (key === "-") return zoomPair(view, 1 / 1.6, middle, height);
  if (key === "0") return wholePair;
  const by = arrows[key];
  return by ? panPair(view, by, height) : null;
}
