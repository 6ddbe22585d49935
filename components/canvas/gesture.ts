import { grainOf, roundPoint, roundPx, type Grip as KitGrip, type PhotoDrag } from "@/components/canvas-kit";
import { assertNever } from "@/lib/base";
import { add, distance, subtract, type Point } from "@/lib/geometry";
import type { Drawing, PhotoPoint, SceneShape } from "@/lib/marks";
import { closeFreehand, finish, placePoint, type Draft, type PathKinds, type Step } from "./draft";
import { mayFollow } from "./followed";
import { handleAt, type Handle } from "./handles";
import { markAt } from "./hit";
import type { Suggested } from "./suggested";
import type { Tool } from "./types";

/** What a press took hold of. Stretching gives a radius, a straight line or a freehand outline. */
export type Grip = KitGrip<
  { readonly kind: "handle"; readonly handle: Handle } | { readonly kind: "mark"; readonly id: string }
>;

/** What there is to take hold of. */
export interface Scenery {
  readonly tool: Tool;
  readonly draft: Draft | null;
  readonly drawing: Drawing;
  readonly shapes: readonly SceneShape[];
  readonly handles: readonly Handle[];
  readonly selectedId: string | null;
  /** Photo pixels per CSS pixel. */
  readonly unitPx: number;
  /** Lines run along the edge: they are set point by point, so that each stretch is seen before it is kept. */
  readonly follows?: boolean;
  readonly suggested?: Suggested | null;
}

/** `reach` in CSS pixels: wide for a finger, narrow for a mouse. */
export function gripAt(scenery: Scenery, at: Point<"photo">, reach: number): Grip {
  const { tool, draft, drawing, shapes, handles, selectedId, unitPx, follows = false } = scenery;
  const isDrawing = draft?.kind === "path";
  const handle = isDrawing ? null : handleAt(handles, at, reach * unitPx);
  if (handle !== null) return { kind: "handle", handle };
  if (tool === "move") {
    const id = markAt(drawing, shapes, at, reach, unitPx);
    return id !== null && id === selectedId ? { kind: "mark", id } : { kind: "pan" };
  }
  return placed.has(tool) || isDrawing || (follows && mayFollow(tool))
    ? { kind: "place" }
    : { kind: "stretch" };
}

/** What is measured from is placed point by point, never drawn in one go. */
const placed: ReadonlySet<Tool> = new Set<Tool>(["scale", "metal", "edge", "root"]);

/** A drag so far, with the tool in hand. */
export interface Drag extends PhotoDrag {
  readonly tool: Tool;
}

/** The draft as it was at the press, changed by the drag. */
export function dragDraft(grip: Grip, draft: Draft | null, { tool, from, to, trail }: Drag): Draft | null {
  switch (grip.kind) {
    case "pan":
      return draft;
    case "handle":
      // The point keeps its distance from the finger, so taking hold beside it does not make it jump.
      return {
        kind: "change",
        action: grip.handle.move({ ...roundPoint(add(grip.handle.at, subtract(to, from))), ...grain(to) }),
      };
    case "mark":
      return {
        kind: "change",
        action: { type: "mark.moveBy", id: grip.id, by: roundPoint(subtract(to, from)) },
      };
    case "place":
      if (tool === "move") return draft;
      if (tool === "point") return { kind: "spot", at: to, radius: null };
      return draft?.kind === "path"
        ? { ...draft, tool, next: to }
        : { kind: "path", tool, points: [], next: to };
    case "stretch":
      if (tool === "move") return draft;
      if (tool === "point") return { kind: "spot", at: from, radius: roundPx(distance(from, to)) };
      if (tool === "outline") return { kind: "freehand", points: trail };
      return { kind: "path", tool, points: [from], next: to };
    default:
      return assertNever(grip);
  }
}

/** A moved point is as fine as the view it was let go in. */
const grain = ({ grainPx }: PhotoPoint): { grainPx?: number } =>
  grainPx === undefined ? {} : { grainPx: grainOf(grainPx) };

/** What a tap means here: how near "the same point again" is, and how coarse a freehand outline may become. */
export interface Reach extends PathKinds {
  /** Photo pixels. */
  readonly again: number;
  /** Photo pixels. */
  readonly tolerance: number;
}

/** A press without a drag. */
export function tap(grip: Grip, draft: Draft | null, tool: Tool, at: PhotoPoint, reach: Reach): Step {
  if (tool === "move" || grip.kind === "pan" || grip.kind === "handle" || grip.kind === "mark") {
    return { draft, finished: null };
  }
  if (tool === "point") return { draft: null, finished: finish({ kind: "spot", at, radius: null }) };
  return placePoint(tool, draft, at, reach.again, reach);
}

/** The end of a drag: what `draft` was at the press, and where it went. */
export function release(grip: Grip, draft: Draft | null, drag: Drag, reach: Reach): Step {
  const { tool, from, to, trail } = drag;
  if (grip.kind === "pan") return { draft, finished: null };
  if (grip.kind === "place") return tap(grip, draft, tool, to, reach);
  if (grip.kind === "stretch" && tool === "outline") {
    return { draft: null, finished: closeFreehand(trail, reach.tolerance) };
  }
  if (grip.kind === "stretch" && (tool === "line" || tool === "weld-line")) {
    return { draft: null, finished: finish({ kind: "path", tool, points: [from, to], next: null }) };
  }
  const last = dragDraft(grip, draft, drag);
  if (last?.kind === "change") return { draft: null, finished: { kind: "change", action: last.action } };
  return { draft: null, finished: finish(last) };
}
