import { distance, midpoint, type Point } from "@/lib/geometry";
import {
  fewestPoints,
  mapScalePoints,
  scalePoints,
  shapePoints,
  type Drawing,
  type DrawingAction,
  type Mark,
  type PhotoPoint,
} from "@/lib/marks";
import { scalePicks } from "./scale-picks";
import type { Tool } from "./types";
import { roundPx } from "./view";

/** A place to take hold of. Dragging it makes the action that `move` names. */
export interface Handle {
  readonly key: string;
  readonly at: Point;
  /** "between" puts a new point into the line, "radius" sets a spot's size. */
  readonly role: "point" | "between" | "radius";
  readonly move: (to: PhotoPoint) => DrawingAction;
  /** Takes the point out; null where the shape needs it. */
  readonly remove: DrawingAction | null;
}

/** CSS pixels: a segment shorter than this has no room for a handle in its middle. */
const ROOM_BETWEEN = 76;
const SPOT_RADIUS_HANDLE = 30;

/** Handles of what the tool works on: the selected mark, the scale or the weld line. `unitPx`: photo px per CSS px. */
export function handlesOf(
  drawing: Drawing,
  tool: Tool,
  selectedId: string | null,
  unitPx: number,
): readonly Handle[] {
  if (tool === "scale" && drawing.scale !== null) return scaleHandles(drawing.scale);
  if (tool === "weld-line" && drawing.weldLine !== null) return weldLineHandles(drawing.weldLine);
  const mark = tool === "move" ? drawing.marks.find((m) => m.id === selectedId) : undefined;
  return mark === undefined ? [] : markHandles(mark, unitPx);
}

function scaleHandles(scale: NonNullable<Drawing["scale"]>): readonly Handle[] {
  // The corners of a printed strip were found by the computer, hundreds of them: not for dragging.
  if (scale.kind === "strip") return [];
  return scalePoints(scale).map((at, index) => ({
    key: `scale-${index}`,
    at,
    role: "point",
    move: (to) => ({ type: "scale.set", scale: mapScalePoints(scale, (p, i) => (i === index ? to : p)) }),
    remove:
      scale.kind === "disc" && scale.rim.length > scalePicks.disc.fewest
        ? { type: "scale.set", scale: { ...scale, rim: scale.rim.toSpliced(index, 1) } }
        : null,
  }));
}

function weldLineHandles(points: readonly PhotoPoint[]): readonly Handle[] {
  return points.map((at, index) => ({
    key: `weld-${index}`,
    at,
    role: "point",
    move: (to) => ({ type: "weldLine.set", points: points.with(index, to) }),
    remove: points.length > 2 ? { type: "weldLine.set", points: points.toSpliced(index, 1) } : null,
  }));
}

function markHandles(mark: Mark, unitPx: number): readonly Handle[] {
  const { id, shape } = mark;
  const points = shapePoints(shape);
  const corners = points.map((at, index): Handle => ({
    key: `${id}-${index}`,
    at,
    role: "point",
    move: (to) => ({ type: "mark.movePoint", id, index, to }),
    remove: points.length > fewestPoints[shape.kind] ? { type: "mark.removePoint", id, index } : null,
  }));
  if (shape.kind === "point") {
    const reach = shape.radius ?? SPOT_RADIUS_HANDLE * unitPx;
    const radius: Handle = {
      key: `${id}-radius`,
      at: { x: shape.at.x + reach, y: shape.at.y },
      role: "radius",
      move: (to) => ({
        type: "mark.replaceShape",
        id,
        shape: { ...shape, radius: Math.max(0.5, roundPx(distance(shape.at, to))) },
      }),
      remove: null,
    };
    return [radius, ...corners];
  }
  const ends = shape.kind === "outline" ? [...points, points[0]!] : points;
  const between = ends.slice(1).flatMap((b, i): Handle[] => {
    const a = ends[i]!;
    if (distance(a, b) < ROOM_BETWEEN * unitPx) return [];
    return [
      {
        key: `${id}-between-${i}`,
        at: midpoint(a, b),
        role: "between",
        move: (to) => ({ type: "mark.insertPoint", id, index: i + 1, at: to }),
        remove: null,
      },
    ];
  });
  return [...between, ...corners];
}

/** The handle nearest to a point within `reach` (photo pixels); a real point wins over one between. */
export function handleAt(handles: readonly Handle[], at: Point, reach: number): Handle | null {
  const weight = (handle: Handle): number =>
    distance(handle.at, at) + (handle.role === "between" ? reach / 3 : 0);
  const near = handles.filter((handle) => distance(handle.at, at) <= reach);
  return near.reduce<Handle | null>(
    (best, h) => (best === null || weight(h) < weight(best) ? h : best),
    null,
  );
}
