import type { Point } from "@/lib/geometry";
import { fitView, keepInSight, type Size, type View } from "./view";

/** One change to how the photo lies: from the view there is and the fitted one, in a box of this size. */
export type ViewStep = (view: View, fitted: View, box: Size) => View;

/**
 * The view while a hand moves it. What is painted goes along without being painted anew, and nobody else is told, until the
 * hand has rested: a mark drawn five hundred times over would make every frame of a pan late.
 */
export interface LiveView {
  readonly now: () => View;
  /** By a hand in motion: listeners hear at once, the screen when it rests. */
  readonly move: (step: ViewStep) => void;
  /** By a button or a key: the screen hears at once. Null: the whole photo, however the box changes. */
  readonly put: (moved: View | null) => void;
  /** A finger lies on the glass, or has left it: while it does, it does not rest. */
  readonly hold: (isDown: boolean) => void;
  /** The hand is about to do something else: the screen hears now what it has not heard yet. True if there was anything. */
  readonly rest: () => boolean;
  /** Sizes of photo and box, CSS pixels. */
  readonly lay: (photo: Size, box: Size) => void;
  /** Called with every view there is; returns how to stop it. */
  readonly follow: (told: (view: View) => void) => () => void;
}

/** Without a further move for this long, ms, the hand rests. */
export const REST_MS = 180;
/** While it moves on and on beyond what is painted, what is missing at the edges waits no longer than this, ms. */
const LATEST_MS = 700;

/** Told by its caller what the time is, and how to be woken. */
export interface Clock {
  readonly now: () => number;
  /** Calls back after so many ms; returns how to call it off. */
  readonly after: (ms: number, run: () => void) => () => void;
}

const nothing = (): void => undefined;

/** @param onRest Told the view in which everything is to be painted; null for the fitted one. */
export function liveView(onRest: (moved: View | null) => void, clock: Clock): LiveView {
  let [photo, box]: [Size, Size] = [none, none];
  let [moved, isHeld]: [View | null, boolean] = [null, false];
  const listeners = new Set<(view: View) => void>();
  const laid = (view: View | null): View =>
    view === null ? fitView(photo, box) : keepInSight(view, photo, box);
  const tell = (): void => listeners.forEach((told) => told(laid(moved)));
  const resting = restingAt(onRest, clock);
  const restSoon = (): void => resting.soon(() => moved, isHeld);
  return {
    now: () => laid(moved),
    hold: (isDown) => {
      isHeld = isDown;
      restSoon();
    },
    move: (step) => {
      moved = keepInSight(step(laid(moved), fitView(photo, box), box), photo, box);
      tell();
      const isLate = isFarOff(laid(resting.view()), laid(moved), box) && resting.since() > LATEST_MS;
      if (isLate) resting.at(moved);
      else restSoon();
    },
    put: (next) => {
      moved = next;
      tell();
      resting.at(moved);
    },
    rest: () => resting.at(moved),
    lay: (nextPhoto, nextBox) => {
      [photo, box] = [nextPhoto, nextBox];
    },
    follow: (told) => {
      listeners.add(told);
      return () => listeners.delete(told);
    },
  };
}

/** Where the hand rested last, and the wait until it rests again. */
function restingAt(onRest: (moved: View | null) => void, clock: Clock) {
  let [rested, restedAt, callOff]: [View | null, number, () => void] = [null, 0, nothing];
  const at = (moved: View | null): boolean => {
    callOff();
    callOff = nothing;
    if (moved === rested) return false;
    [rested, restedAt] = [moved, clock.now()];
    onRest(moved);
    return true;
  };
  return {
    at,
    view: () => rested,
    since: () => clock.now() - restedAt,
    /** Once nothing moved for a while; not while it is held. */
    soon: (moved: () => View | null, isHeld: boolean) => {
      callOff();
      callOff = isHeld ? nothing : clock.after(REST_MS, () => void at(moved()));
    },
  };
}

const none: Size = { width: 0, height: 0 };

/** Share of the box that is painted beyond each of its edges, so that a pan does not come to bare photo at once. */
export const BEYOND = 0.35;
/** More device pixels than this are not kept for it: on a large screen less is painted beyond. */
const MOST_PIXELS = 8_000_000;

/** How far beyond the box is painted, CSS pixels, to every side of it. */
export function beyond(box: Size, pixelRatio: number): number {
  const whole = Math.round(BEYOND * Math.min(box.width, box.height));
  const pixels = (room: number): number => (box.width + 2 * room) * (box.height + 2 * room) * pixelRatio ** 2;
  return pixels(whole) <= MOST_PIXELS ? whole : 0;
}

/** Where what was painted in one view lies in another: scaled by `k` about the box's corner, then shifted. */
export function carried(painted: View, now: View): { readonly k: number; readonly by: Point<"view"> } {
  const k = now.zoom / painted.zoom;
  return { k, by: { x: now.pan.x - painted.pan.x * k, y: now.pan.y - painted.pan.y * k } };
}

/** So far from where it was painted that an edge shows, or, zoomed, that letters are eight times or an eighth their size. */
function isFarOff(painted: View, now: View, box: Size): boolean {
  const { k, by } = carried(painted, now);
  if (k !== 1) return k > 8 || k < 1 / 8;
  const room = BEYOND * Math.min(box.width, box.height);
  return Math.abs(by.x) > room || Math.abs(by.y) > room;
}
