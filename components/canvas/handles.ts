import { roundPx } from "@/components/canvas-kit";
import { distance, type Point } from "@/lib/geometry";
import {
  fewestPoints,
  mapScalePoints,
  scalePoints,
  shapePoints,
  type Drawing,
  type Mark,
  type MarkShapeData,
  type PhotoPoint,
} from "@/lib/marks";
import { scalePicks } from "./scale-picks";
import { between, type Handle } from "./handle";
import { sectionHandles } from "./section-handles";
import type { SectionWork, Tool } from "./types";

export type { Handle } from "./handle";

type ShapeOf<Kind extends MarkShapeData["kind"]> = Extract<MarkShapeData, { kind: Kind }>;

/** Photo pixels: a spot that was given a size keeps one. */
const LEAST_RADIUS = 0.5;
/** CSS pixels: the least from a spot's middle to the handle of its size, so that a finger meets one of the two. */
export const RADIUS_STANDOFF = 44;

/**
 * Handles of what the tool works on: the selected mark, the scale or the weld line. `unitPx`: photo px per CSS px;
 * `widthPx`: of the photo, where no handle lies beyond its edge.
 */
export function handlesOf(
  drawing: Drawing,
  tool: Tool,
  selectedId: string | null,
  unitPx: number,
  widthPx = Infinity,
  work: Pick<SectionWork, "section" | "places"> | null = null,
): readonly Handle[] {
  const onSection = work && sectionHandles(work, tool, unitPx);
  if (onSection) return onSection;
  if (tool === "scale" && drawing.scale !== null) return scaleHandles(drawing.scale);
  if (tool === "weld-line" && drawing.weldLine !== null)
    return [...toeHandles(drawing.toes, unitPx), ...weldLineHandles(drawing.weldLine)];
  const mark = tool === "move" ? drawing.marks.find((m) => m.id === selectedId) : undefined;
  return mark === undefined ? [] : markHandles(mark, unitPx, widthPx);
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

/** CSS pixels between two handles of a toe, so that a finger meets one. */
const TOE_HANDLES_APART = 56;

/** The accepted toes' places, as many as fingers can tell apart. */
function toeHandles(toes: Drawing["toes"], unitPx: number): readonly Handle[] {
  if (toes === undefined) return [];
  return (["upper", "lower"] as const).flatMap((toe) => {
    let last: Point<"photo"> | null = null;
    return toes[toe].flatMap((at, index): Handle[] => {
      if (last !== null && distance(last, at) < TOE_HANDLES_APART * unitPx) return [];
      last = at;
      return [
        {
          key: `toe-${toe}-${index}`,
          at: { x: at.x, y: at.y },
          role: "between",
          move: (to) => ({ type: "toes.movePoint", toe, index, to }),
          remove: null,
        },
      ];
    });
  });
}

function markHandles(mark: Mark, unitPx: number, widthPx: number): readonly Handle[] {
  const { id, shape } = mark;
  const points = shapePoints(shape);
  const corners = points.map((at, index): Handle => ({
    key: `${id}-${index}`,
    at,
    role: "point",
    move: (to) => ({ type: "mark.movePoint", id, index, to }),
    remove: points.length > fewestPoints[shape.kind] ? { type: "mark.removePoint", id, index } : null,
  }));
  return shape.kind === "point"
    ? [radiusHandle(id, shape, unitPx, widthPx), ...corners]
    : [...betweenHandles(id, shape, unitPx), ...corners];
}

/**
 * The size of a spot. A pore may be smaller than any finger, so its handle stands off on a stem and what the hand moves
 * it by is what the radius grows by; a large one has the handle on its rim.
 */
function radiusHandle(id: string, shape: ShapeOf<"point">, unitPx: number, widthPx: number): Handle {
  const radius = shape.radius ?? 0;
  const reach = Math.max(radius, RADIUS_STANDOFF * unitPx);
  const side = shape.at.x + reach > widthPx ? -1 : 1;
  return {
    key: `${id}-radius`,
    at: { x: shape.at.x + side * reach, y: shape.at.y },
    role: "radius",
    stem: { x: shape.at.x + side * radius, y: shape.at.y },
    move: (to) => ({
      type: "mark.replaceShape",
      id,
      shape: {
        ...shape,
        radius: Math.max(LEAST_RADIUS, roundPx(distance(shape.at, to) - (reach - radius))),
      },
    }),
    remove: null,
  };
}

/** In the middle of every stretch with room for it: dragged, it becomes a point of the line. */
function betweenHandles(id: string, shape: ShapeOf<"line" | "outline">, unitPx: number): readonly Handle[] {
  const { points } = shape;
  return between(id, shape.kind === "outline" ? [...points, points[0]!] : points, unitPx, (index, at) => ({
    type: "mark.insertPoint",
    id,
    index,
    at,
  }));
}

/** The handle nearest to a point within `reach` (photo pixels); a real point wins over one between. */
export function handleAt(handles: readonly Handle[], at: Point<"photo">, reach: number): Handle | null {
  const weight = (handle: Handle): number =>
    distance(handle.at, at) + (handle.role === "between" ? reach / 3 : 0);
  const near = handles.filter((handle) => distance(handle.at, at) <= reach);
  return near.reduce<Handle | null>(
    (best, h) => (best === null || weight(h) < weight(best) ? h : best),
    null,
  );
}
