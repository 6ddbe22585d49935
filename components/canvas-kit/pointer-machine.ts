import { distance, midpoint, subtract, type Point } from "@/lib/geometry";
import type { PhotoPoint } from "@/lib/marks";
import type { Grip, HeldThing } from "./grip";

/** CSS pixels: half of a 44 px target for a finger, less for a mouse. */
export const REACH = { touch: 22, mouse: 10 } as const;
/** CSS pixels a press may wander and still be a tap. */
const SLOP = { touch: 9, mouse: 3 } as const;
export const HOLD_MS = 400;
/** CSS pixels a finger trembles while it holds still; beyond, it has begun a slow drag. */
const TREMBLE = 3;
const DOUBLE_MS = 320;
/** CSS pixels between two taps that are one double tap. */
const DOUBLE_REACH = 24;

export type PointerKind = keyof typeof REACH;

/** One finger or the mouse button down, from its press to its end. Screen points are CSS pixels in the canvas box. */
export interface Press<Held extends HeldThing = never> {
  readonly kind: PointerKind;
  readonly from: PhotoPoint;
  readonly fromScreen: Point<"view">;
  /** Where it is now, on the screen. */
  readonly last: Point<"view">;
  /** Every place it has been since it counts as a drag, first to last. */
  readonly trail: readonly PhotoPoint[];
  readonly grip: Grip<Held>;
  readonly moved: boolean;
  /** Of the press event, ms: a busy phone hands events over late, their own times stay true. */
  readonly time: number;
  /** A long press turned it from stretching into placing. */
  readonly held: boolean;
}

export interface Pointers<Held extends HeldThing = never> {
  /** Every finger on the glass and where, CSS pixels in the canvas box. */
  readonly down: ReadonlyMap<number, Point<"view">>;
  /** The one that acts; null while none or more than one is down. */
  readonly press: Press<Held> | null;
  readonly lastTap: { readonly at: Point<"view">; readonly time: number } | null;
}

export const noPointers: Pointers = { down: new Map(), press: null, lastTap: null };

/** What a pointer did. `photo` is the photo point under `at` at that moment. */
export type PointerInput<Held extends HeldThing = never> =
  | {
      readonly type: "press";
      readonly id: number;
      readonly at: Point<"view">;
      readonly photo: PhotoPoint;
      readonly time: number;
      readonly kind: PointerKind;
      readonly grip: Grip<Held>;
    }
  /** Another finger while one is down already. */
  | { readonly type: "join"; readonly id: number; readonly at: Point<"view"> }
  | {
      readonly type: "move";
      readonly id: number;
      readonly at: Point<"view">;
      readonly photo: PhotoPoint;
      readonly time: number;
      readonly kind: PointerKind;
    }
  | { readonly type: "lift"; readonly id: number; readonly time: number }
  /** The system took the pointer away. */
  | { readonly type: "cancel"; readonly id: number }
  /** HOLD_MS have passed since the press. */
  | { readonly type: "hold" };

/** What that means for the photo and the drawing. */
export type PointerEffect<Held extends HeldThing = never> =
  | { readonly type: "drag" | "release"; readonly press: Press<Held> }
  | { readonly type: "tap"; readonly press: Press<Held>; readonly double: boolean }
  /** As if the press had never been. */
  | { readonly type: "giveUp" }
  | { readonly type: "hover"; readonly at: PhotoPoint }
  | { readonly type: "pan"; readonly by: Point<"view"> }
  | { readonly type: "zoom"; readonly factor: number; readonly at: Point<"view"> }
  /** Wants a "hold" after HOLD_MS. */
  | { readonly type: "awaitHold" };

export interface PointerStep<Held extends HeldThing = never> {
  readonly pointers: Pointers<Held>;
  readonly effects: readonly PointerEffect<Held>[];
}

type Input<Type extends PointerInput["type"], Held extends HeldThing> = Extract<
  PointerInput<Held>,
  { type: Type }
>;

/**
 * One finger or the mouse acts, two fingers pinch: the second finger takes back whatever the first had begun, and
 * nothing is placed until all have left the glass and one comes again.
 */
export function stepPointers<Held extends HeldThing = never>(
  pointers: Pointers<Held>,
  input: PointerInput<Held>,
): PointerStep<Held> {
  switch (input.type) {
    case "press":
      return press(pointers, input);
    case "join":
      return {
        pointers: { ...pointers, down: new Map(pointers.down).set(input.id, input.at), press: null },
        effects: pointers.press ? [{ type: "giveUp" }] : [],
      };
    case "move":
      return move(pointers, input);
    case "lift":
      return lift(pointers, input);
    case "cancel":
      return {
        pointers: { ...pointers, down: without(pointers.down, input.id), press: null },
        effects: pointers.press ? [{ type: "giveUp" }] : [],
      };
    case "hold":
      return hold(pointers);
  }
}

function press<Held extends HeldThing = never>(
  pointers: Pointers<Held>,
  { id, at, photo, time, kind, grip }: Input<"press", Held>,
): PointerStep<Held> {
  const begun: Press<Held> = {
    kind,
    from: photo,
    fromScreen: at,
    last: at,
    trail: [photo],
    grip,
    moved: false,
    time,
    held: false,
  };
  const shows: readonly PointerEffect<Held>[] = grip.kind === "place" ? [{ type: "drag", press: begun }] : [];
  const waits: readonly PointerEffect<Held>[] = grip.kind === "stretch" ? [{ type: "awaitHold" }] : [];
  return {
    pointers: { ...pointers, down: new Map(pointers.down).set(id, at), press: begun },
    effects: kind === "touch" ? [...shows, ...waits] : [],
  };
}

function move<Held extends HeldThing = never>(
  pointers: Pointers<Held>,
  input: Input<"move", Held>,
): PointerStep<Held> {
  const { id, at, photo, kind } = input;
  if (!pointers.down.has(id)) {
    const hovers = kind === "mouse" && pointers.press === null;
    return { pointers, effects: hovers ? [{ type: "hover", at: photo }] : [] };
  }
  const down = new Map(pointers.down).set(id, at);
  if (pointers.press === null)
    return { pointers: { ...pointers, down }, effects: pinch(pointers.down, id, at) };
  const was = pointers.press;
  const now = moved(was, input);
  const step = (next: Press<Held>, effects: readonly PointerEffect<Held>[]): PointerStep<Held> => ({
    pointers: { ...pointers, down, press: next },
    effects,
  });
  if (!now.moved && now.grip.kind !== "place") return step(now, []);
  if (now.grip.kind === "pan") return step(now, [{ type: "pan", by: subtract(at, was.last) }]);
  const trailed = { ...now, trail: [...was.trail, photo] };
  return step(trailed, [{ type: "drag", press: trailed }]);
}

/** The press at its new place. Beyond the slop it is a drag for good. */
function moved<Held extends HeldThing = never>(
  was: Press<Held>,
  { at, time }: Input<"move", Held>,
): Press<Held> {
  const leaves = distance(at, was.fromScreen) > SLOP[was.kind];
  // It left before the time of a long press was up, whenever we were told: a drag after all.
  const wasNoHold = leaves && !was.moved && was.held && time - was.time < HOLD_MS;
  return {
    ...was,
    last: at,
    moved: was.moved || leaves,
    grip: wasNoHold ? { kind: "stretch" } : was.grip,
  };
}

/** The photo follows the middle between the first two fingers and grows with their distance. */
function pinch(
  down: ReadonlyMap<number, Point<"view">>,
  id: number,
  to: Point<"view">,
): readonly PointerEffect[] {
  const [a, b] = [...down].slice(0, 2);
  if (!a || !b || (a[0] !== id && b[0] !== id)) return [];
  const [was, still] = a[0] === id ? [a[1], b[1]] : [b[1], a[1]];
  const middle = midpoint(still, to);
  return [
    { type: "pan", by: subtract(middle, midpoint(still, was)) },
    { type: "zoom", factor: distance(still, to) / Math.max(1, distance(still, was)), at: middle },
  ];
}

function lift<Held extends HeldThing = never>(
  pointers: Pointers<Held>,
  { id, time }: Input<"lift", Held>,
): PointerStep<Held> {
  const { press: ended, lastTap } = pointers;
  const left = { ...pointers, down: without(pointers.down, id), press: null };
  if (ended === null) return { pointers: left, effects: [] };
  if (ended.moved) return { pointers: left, effects: [{ type: "release", press: ended }] };
  const double =
    lastTap !== null && time - lastTap.time < DOUBLE_MS && distance(lastTap.at, ended.last) < DOUBLE_REACH;
  return {
    pointers: { ...left, lastTap: double ? null : { at: ended.last, time } },
    effects: [{ type: "tap", press: ended, double }],
  };
}

function hold<Held extends HeldThing = never>(pointers: Pointers<Held>): PointerStep<Held> {
  const was = pointers.press;
  const still =
    was !== null &&
    !was.moved &&
    was.grip.kind === "stretch" &&
    distance(was.last, was.fromScreen) <= TREMBLE;
  if (!still) return { pointers, effects: [] };
  const placing: Press<Held> = { ...was, grip: { kind: "place" }, held: true };
  return { pointers: { ...pointers, press: placing }, effects: [{ type: "drag", press: placing }] };
}

function without(down: ReadonlyMap<number, Point<"view">>, id: number): ReadonlyMap<number, Point<"view">> {
  const rest = new Map(down);
  rest.delete(id);
  return rest;
}

/** Whether the magnifier helps: a finger is about to set a point and hides it. */
export function wantsLoupe<Held extends HeldThing = never>(
  pressed: Press<Held> | null,
): pressed is Press<Held> {
  return (
    pressed?.kind === "touch" &&
    (pressed.grip.kind === "handle" || pressed.grip.kind === "place" || pressed.grip.kind === "stretch")
  );
}
