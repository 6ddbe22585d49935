"use client";

import { useEffect, useEffectEvent, useRef, useState, type PointerEvent, type RefObject } from "react";
import type { Point } from "@/lib/geometry";
import type { Grip, HeldThing, PhotoDrag } from "./grip";
import {
  HOLD_MS,
  noPointers,
  REACH,
  stepPointers,
  wantsLoupe,
  type PointerEffect,
  type PointerInput,
  type PointerKind,
  type Pointers,
  type Press,
} from "./pointer-machine";
import type { ViewControl } from "./use-view";
import { placeIn, useWheel } from "./use-wheel";
import { pickPoint, type View } from "./view";

/** What the one finger that acts is for. Points are photo pixels, `reach` is CSS pixels. */
export interface PointerPlan<Held extends HeldThing = never> {
  /** Asked once, when the press begins. */
  readonly grip: (at: Point<"photo">, reach: number) => Grip<Held>;
  readonly onDrag: (grip: Grip<Held>, drag: PhotoDrag) => void;
  readonly onTap: (grip: Grip<Held>, at: Point<"photo">, reach: number) => void;
  readonly onRelease: (grip: Grip<Held>, drag: PhotoDrag, reach: number) => void;
  /** A second finger came down, or the system took the pointer away: as if the press had never been. */
  readonly onGiveUp: () => void;
  readonly onHover: (at: Point<"photo"> | null) => void;
  readonly zoomsOnDoubleTap: boolean;
}

export interface LoupePlace {
  readonly photo: Point<"photo">;
  readonly screen: Point<"view">;
}

export type PointerListeners = ReturnType<typeof listeners>;

/** DOM pointers in, photo points out: `stepPointers` decides, this hook listens and carries out. */
export function usePointers<Held extends HeldThing = never>(
  box: RefObject<HTMLElement | null>,
  control: ViewControl,
  plan: PointerPlan<Held>,
) {
  const pointers = useRef<Pointers<Held>>(noPointers);
  const [loupe, setLoupe] = useState<LoupePlace | null>(null);
  const { live } = control;
  const feed = (input: PointerInput<Held>) => {
    const step = stepPointers(pointers.current, input);
    pointers.current = step.pointers;
    if (input.type !== "move") live.hold(step.pointers.down.size > 0);
    const { press } = step.pointers;
    setLoupe(wantsLoupe(press) ? { photo: pickPoint(live.now(), press.last), screen: press.last } : null);
    for (const effect of step.effects) {
      if (effect.type === "awaitHold") awaitHold();
      else carryOut(effect, control, plan);
    }
  };
  const awaitHold = useHold(() => feed({ type: "hold" }));
  useWheel(box, control.hand.zoomBy);
  return { loupe, listeners: listeners(box, control, plan, () => pointers.current, feed) };
}

const dragOf = (press: Press<HeldThing>, view: View): PhotoDrag => ({
  from: press.from,
  to: pickPoint(view, press.last),
  trail: press.trail,
});

function carryOut<Held extends HeldThing = never>(
  effect: Exclude<PointerEffect<Held>, { type: "awaitHold" }>,
  { live, hand, zoomBy }: ViewControl,
  plan: PointerPlan<Held>,
): void {
  const view = live.now();
  switch (effect.type) {
    case "pan":
      return hand.panBy(effect.by);
    case "zoom":
      return hand.zoomBy(effect.factor, effect.at);
    case "hover":
      return plan.onHover(effect.at);
    case "giveUp":
      return plan.onGiveUp();
    case "drag":
      return plan.onDrag(effect.press.grip, dragOf(effect.press, view));
    case "release":
      return plan.onRelease(effect.press.grip, dragOf(effect.press, view), REACH[effect.press.kind]);
    case "tap": {
      const { grip, from, last, kind } = effect.press;
      return effect.double && plan.zoomsOnDoubleTap ? zoomBy(2, last) : plan.onTap(grip, from, REACH[kind]);
    }
  }
}

/** Calls back once HOLD_MS after it was last asked to. */
function useHold(onHold: () => void): () => void {
  const [asked, setAsked] = useState(0);
  const held = useEffectEvent(onHold);
  useEffect(() => {
    if (asked === 0) return undefined;
    const timer = window.setTimeout(() => held(), HOLD_MS);
    return () => window.clearTimeout(timer);
  }, [asked]);
  return () => setAsked((count) => count + 1);
}

const kindOf = (event: PointerEvent): PointerKind => (event.pointerType === "mouse" ? "mouse" : "touch");

function listeners<Held extends HeldThing = never>(
  box: RefObject<HTMLElement | null>,
  { live, rest }: ViewControl,
  plan: PointerPlan<Held>,
  now: () => Pointers<Held>,
  feed: (input: PointerInput<Held>) => void,
) {
  const seen = (event: PointerEvent) => {
    const at = placeIn(box.current, event);
    return {
      id: event.pointerId,
      at,
      photo: pickPoint(live.now(), at),
      time: event.timeStamp,
      kind: kindOf(event),
    };
  };
  return {
    // What a press means is asked of the marks as they are painted.
    onPointerDownCapture: rest,
    onPointerDown: (event: PointerEvent<HTMLElement>) => {
      if (event.button === 2) return;
      box.current?.focus({ preventScroll: true });
      event.currentTarget.setPointerCapture(event.pointerId);
      const here = seen(event);
      if (now().down.size > 0) return feed({ type: "join", id: here.id, at: here.at });
      const grip: Grip<Held> = event.button === 1 ? { kind: "pan" } : plan.grip(here.photo, REACH[here.kind]);
      feed({ ...here, type: "press", grip });
    },
    onPointerMove: (event: PointerEvent<HTMLElement>) => feed({ ...seen(event), type: "move" }),
    onPointerUp: (event: PointerEvent<HTMLElement>) =>
      feed({ type: "lift", id: event.pointerId, time: event.timeStamp }),
    onPointerCancel: (event: PointerEvent<HTMLElement>) => feed({ type: "cancel", id: event.pointerId }),
    onPointerLeave: () => {
      if (now().press === null) plan.onHover(null);
    },
  };
}
