"use client";

import { useCallback, useEffectEvent, useRef, type KeyboardEvent, type PointerEvent } from "react";
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
  const placeOf = (pane: Element, event: { clientX: number; clientY: number }): PanePlace => {
    const { left, top, width } = pane.getBoundingClientRect();
    return { x: (event.clientX - left) / width, y: (event.clientY - top) / width };
  };
  const moved = (id: number, to: PanePlace): PairView => {
    const was = down.current.get(id);
    if (!was) return view;
    const other = [...down.current].find(([one]) => one !== id)?.[1];
    down.current.set(id, to);
    if (!other) return panPair(view, { x: to.x - was.x, y: to.y - was.y }, height);
    const [from, now] = [apart(was, other), apart(to, other)];
    const middle = { x: (to.x + other.x) / 2, y: (to.y + other.y) / 2 };
    const shifted = panPair(view, { x: (to.x - was.x) / 2, y: (to.y - was.y) / 2 }, height);
    return zoomPair(shifted, now / Math.max(0.01, from), middle, height);
  };
  const lift = ({ pointerId }: PointerEvent) => void down.current.delete(pointerId);
  const onWheel = useEffectEvent((event: WheelEvent, pane: Element) => {
    event.preventDefault();
    onView(zoomPair(view, Math.exp(-event.deltaY * 0.0018), placeOf(pane, event), height));
  });
  // The page must not scroll under a wheel that zooms, and only a listener of our own may say so.
  const ref = useCallback((pane: HTMLElement | null) => {
    if (!pane) return undefined;
    const listen = (event: WheelEvent) => onWheel(event, pane);
    pane.addEventListener("wheel", listen, { passive: false });
    return () => pane.removeEventListener("wheel", listen);
  }, []);
  return {
    ref,
    listeners: {
      onPointerDown: (event: PointerEvent<HTMLElement>) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        down.current.set(event.pointerId, placeOf(event.currentTarget, event));
      },
      onPointerMove: (event: PointerEvent<HTMLElement>) => {
        if (down.current.has(event.pointerId))
          onView(moved(event.pointerId, placeOf(event.currentTarget, event)));
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

const apart = (a: PanePlace, b: PanePlace): number => Math.hypot(a.x - b.x, a.y - b.y);

function byKey(key: string, view: PairView, height: number): PairView | null {
  const middle = { x: 0.5, y: height / 2 };
  if (key === "+" || key === "=") return zoomPair(view, 1.6, middle, height);
  if (key === "-") return zoomPair(view, 1 / 1.6, middle, height);
  if (key === "0") return wholePair;
  const by = arrows[key];
  return by ? panPair(view, by, height) : null;
}
