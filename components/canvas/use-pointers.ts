import { useEffect, useEffectEvent, useRef, useState, type PointerEvent, type RefObject } from "react";
import { distance, midpoint, subtract, type Point } from "@/lib/geometry";
import type { Drag, Grip } from "./gesture";
import type { ViewControl } from "./use-view";
import { pickPoint } from "./view";

/** CSS pixels: half of a 44 px target for a finger, less for a mouse. */
export const REACH = { touch: 22, mouse: 10 } as const;
/** CSS pixels a press may wander and still be a tap. */
const SLOP = { touch: 9, mouse: 3 } as const;
const HOLD_MS = 400;
/** CSS pixels a finger trembles while it holds still; beyond, it has begun a slow drag. */
const TREMBLE = 3;
const DOUBLE_MS = 320;

type Kind = keyof typeof REACH;
type PhotoDrag = Omit<Drag, "tool">;

export interface PointerPlan {
  readonly grip: (at: Point, reach: number) => Grip;
  readonly onDrag: (grip: Grip, drag: PhotoDrag) => void;
  readonly onTap: (grip: Grip, at: Point, reach: number) => void;
  readonly onRelease: (grip: Grip, drag: PhotoDrag, reach: number) => void;
  /** A second finger came down, or the system took the pointer away: as if the press had never been. */
  readonly onGiveUp: () => void;
  readonly onHover: (at: Point | null) => void;
  readonly zoomsOnDoubleTap: boolean;
}

interface Press {
  readonly kind: Kind;
  readonly from: Point;
  readonly fromScreen: Point;
  readonly trail: Point[];
  grip: Grip;
  last: Point;
  moved: boolean;
  /** Of the press event, ms: a busy phone hands events over late, their own times stay true. */
  readonly time: number;
  /** A long press turned it from stretching into placing. */
  held: boolean;
}

export interface LoupePlace {
  readonly photo: Point;
  readonly screen: Point;
}

/** One finger or the mouse acts, two fingers pinch, the wheel zooms: DOM pointers in, photo points out. */
export function usePointers(box: RefObject<HTMLElement | null>, control: ViewControl, plan: PointerPlan) {
  const down = useRef(new Map<number, Point>());
  const press = useRef<Press | null>(null);
  const lastTap = useRef<{ readonly at: Point; readonly time: number } | null>(null);
  /** Counts touches that a long press may turn from stretching into placing; each starts the timer anew. */
  const [touches, setTouches] = useState(0);
  const [loupe, setLoupe] = useState<LoupePlace | null>(null);
  const { view, zoomBy, panBy } = control;

  const screenOf = (event: { clientX: number; clientY: number }): Point => {
    const rect = box.current?.getBoundingClientRect();
    return { x: event.clientX - (rect?.left ?? 0), y: event.clientY - (rect?.top ?? 0) };
  };
  const dragOf = (p: Press): PhotoDrag => ({ from: p.from, to: pickPoint(view, p.last), trail: p.trail });
  const magnify = (p: Press) => {
    const places = p.grip.kind === "handle" || p.grip.kind === "place" || p.grip.kind === "stretch";
    setLoupe(p.kind === "touch" && places ? { photo: pickPoint(view, p.last), screen: p.last } : null);
  };
  const endPress = () => {
    press.current = null;
    setLoupe(null);
  };

  const onHold = useEffectEvent(() => {
    const p = press.current;
    if (!p || p.moved || p.grip.kind !== "stretch") return;
    if (distance(p.last, p.fromScreen) > TREMBLE) return;
    p.grip = { kind: "place" };
    p.held = true;
    plan.onDrag(p.grip, dragOf(p));
  });
  useEffect(() => {
    if (touches === 0) return;
    const timer = window.setTimeout(() => onHold(), HOLD_MS);
    return () => window.clearTimeout(timer);
  }, [touches]);

  const onPointerDown = (event: PointerEvent<HTMLElement>) => {
    if (event.button === 2) return;
    box.current?.focus({ preventScroll: true });
    event.currentTarget.setPointerCapture(event.pointerId);
    const at = screenOf(event);
    down.current.set(event.pointerId, at);
    if (down.current.size > 1) {
      if (press.current) plan.onGiveUp();
      return endPress();
    }
    const kind: Kind = event.pointerType === "mouse" ? "mouse" : "touch";
    const from = pickPoint(view, at);
    const grip: Grip = event.button === 1 ? { kind: "pan" } : plan.grip(from, REACH[kind]);
    const time = event.timeStamp;
    press.current = {
      kind,
      from,
      fromScreen: at,
      trail: [from],
      grip,
      last: at,
      moved: false,
      held: false,
      time,
    };
    if (kind === "touch" && grip.kind === "stretch") setTouches((count) => count + 1);
    magnify(press.current);
    if (kind === "touch" && grip.kind === "place") plan.onDrag(grip, dragOf(press.current));
  };

  const pinch = (id: number, to: Point) => {
    const [a, b] = [...down.current.entries()].map(([pointer, at]) => ({ pointer, at }));
    if (!a || !b || (a.pointer !== id && b.pointer !== id)) return;
    const still = a.pointer === id ? b.at : a.at;
    const was = a.pointer === id ? a.at : b.at;
    panBy(subtract(midpoint(still, to), midpoint(still, was)));
    zoomBy(distance(still, to) / Math.max(1, distance(still, was)), midpoint(still, to));
  };

  const onPointerMove = (event: PointerEvent<HTMLElement>) => {
    const at = screenOf(event);
    const p = press.current;
    if (down.current.size > 1 && down.current.has(event.pointerId)) pinch(event.pointerId, at);
    if (down.current.has(event.pointerId)) down.current.set(event.pointerId, at);
    if (!p) {
      if (event.pointerType === "mouse") plan.onHover(pickPoint(view, at));
      return;
    }
    const was = p.last;
    p.last = at;
    const moves = distance(at, p.fromScreen) > SLOP[p.kind];
    // It left before the time of a long press was up, whenever we were told: a drag after all.
    if (moves && !p.moved && p.held && event.timeStamp - p.time < HOLD_MS) p.grip = { kind: "stretch" };
    p.moved ||= moves;
    if (!p.moved && p.grip.kind !== "place") return;
    if (p.grip.kind === "pan") return panBy(subtract(at, was));
    p.trail.push(pickPoint(view, at));
    plan.onDrag(p.grip, dragOf(p));
    magnify(p);
  };

  const tapAt = (p: Press, now: number) => {
    const before = lastTap.current;
    const double = before !== null && now - before.time < DOUBLE_MS && distance(before.at, p.last) < 24;
    lastTap.current = double ? null : { at: p.last, time: now };
    if (double && plan.zoomsOnDoubleTap) zoomBy(2, p.last);
    else plan.onTap(p.grip, p.from, REACH[p.kind]);
  };

  const onPointerUp = (event: PointerEvent<HTMLElement>) => {
    down.current.delete(event.pointerId);
    const p = press.current;
    if (!p) return;
    endPress();
    if (p.moved) plan.onRelease(p.grip, dragOf(p), REACH[p.kind]);
    else tapAt(p, event.timeStamp);
  };

  const onPointerCancel = (event: PointerEvent<HTMLElement>) => {
    down.current.delete(event.pointerId);
    if (press.current) plan.onGiveUp();
    endPress();
  };

  const onWheel = useEffectEvent((event: WheelEvent) => {
    event.preventDefault(); // the page must not scroll away under the photo
    const lines = event.deltaMode === 1 ? 16 : 1;
    // A trackpad's pinch arrives as a wheel with Ctrl and small steps.
    zoomBy(Math.exp(-event.deltaY * lines * (event.ctrlKey ? 0.01 : 0.0018)), screenOf(event));
  });
  useEffect(() => {
    const element = box.current;
    const listen = (event: WheelEvent) => onWheel(event);
    element?.addEventListener("wheel", listen, { passive: false });
    return () => element?.removeEventListener("wheel", listen);
  }, [box]);

  const onPointerLeave = () => {
    if (!press.current) plan.onHover(null);
  };
  return { loupe, listeners: { onPointerDown, onPointerMove, onPointerUp, onPointerCancel, onPointerLeave } };
}
