import { distance, midpoint, type Point } from "@/lib/geometry";
import type { PhotoPoint } from "@/lib/marks";
import type { CanvasChange } from "./types";

/** A place to take hold of. Dragging it makes the action that `move` names. */
export interface Handle {
  readonly key: string;
  readonly at: Point<"photo">;
  /** "between" puts a new point into the line, "radius" sets a spot's size. */
  readonly role: "point" | "between" | "radius";
  /** Of a radius: the place on the rim that it stands off from. */
  readonly stem?: Point<"photo">;
  readonly move: (to: PhotoPoint) => CanvasChange;
  /** Takes the point out; null where the shape needs it. */
  readonly remove: CanvasChange | null;
}

/** CSS pixels: a segment shorter than this has no room for a handle in its middle. */
const ROOM_BETWEEN = 76;

/** Handles between the points of a line, each of which puts a new point in: at `index` of the line. */
export function between(
  id: string,
  ends: readonly Point<"photo">[],
  unitPx: number,
  insert: (index: number, at: PhotoPoint) => CanvasChange,
): readonly Handle[] {
  return ends.slice(1).flatMap((b, i): Handle[] => {
    const a = ends[i]!;
    if (distance(a, b) < ROOM_BETWEEN * unitPx) return [];
    return [
      {
        key: `${id}-between-${i}`,
        at: midpoint(a, b),
        role: "between",
        move: (to) => insert(i + 1, to),
        remove: null,
      },
    ];
  });
}
