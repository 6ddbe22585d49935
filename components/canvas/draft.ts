import { assertNever } from "@/lib/base";
import { distance } from "@/lib/geometry";
import {
  fewestPoints,
  simplifyPath,
  type DrawingAction,
  type MarkShapeData,
  type PhotoPoint,
} from "@/lib/marks";
import { scalePicks, type ScalePickKind } from "./scale-picks";
import type { Tool } from "./types";

export type PathTool = Extract<Tool, "line" | "outline" | "scale" | "weld-line">;

/** What is being drawn or dragged and is not yet part of the drawing. Photo pixels. */
export type Draft =
  | { readonly kind: "spot"; readonly at: PhotoPoint; readonly radius: number | null }
  /** Points placed so far, and where the next would go. */
  | {
      readonly kind: "path";
      readonly tool: PathTool;
      readonly points: readonly PhotoPoint[];
      readonly next: PhotoPoint | null;
      /** Of the scale tool: what is being picked. Left out: two points. */
      readonly scaleKind?: ScalePickKind;
    }
  | { readonly kind: "freehand"; readonly points: readonly PhotoPoint[] }
  /** Drawn to the end; it needs a name to become a mark. */
  | { readonly kind: "unnamed"; readonly shape: MarkShapeData }
  /** The scale object is picked; its size is being asked for. */
  | {
      readonly kind: "unmeasured";
      readonly scaleKind: ScalePickKind;
      readonly points: readonly PhotoPoint[];
    }
  /** A drag under way: the one action that its release will send. */
  | { readonly kind: "change"; readonly action: DrawingAction };

/** What a finished draft asks for. */
export type Finished =
  | { readonly kind: "shape"; readonly shape: MarkShapeData }
  | {
      readonly kind: "scale";
      readonly scaleKind: ScalePickKind;
      readonly points: readonly PhotoPoint[];
    }
  | { readonly kind: "weld-line"; readonly points: readonly PhotoPoint[] }
  | { readonly kind: "change"; readonly action: DrawingAction };

export interface Step {
  readonly draft: Draft | null;
  readonly finished: Finished | null;
}

const going = (draft: Draft | null): Step => ({ draft, finished: null });
const done = (finished: Finished): Step => ({ draft: null, finished });

/** Points a path needs before it can be finished. */
export function fewestOf(tool: PathTool, scaleKind: ScalePickKind): number {
  if (tool === "scale") return scalePicks[scaleKind].fewest;
  return tool === "outline" ? fewestPoints.outline : fewestPoints.line;
}

/** More than a drawing may hold on one mark would be refused; a straight line needs no more anyway. */
const MOST_POINTS = 200;

function finishPath(
  tool: PathTool,
  points: readonly PhotoPoint[],
  scaleKind: ScalePickKind = "two-points",
): Finished | null {
  if (points.length < fewestOf(tool, scaleKind)) return null;
  switch (tool) {
    case "line":
    case "outline":
      return { kind: "shape", shape: { kind: tool, points: [...points] } };
    case "scale":
      return { kind: "scale", scaleKind, points };
    case "weld-line":
      return { kind: "weld-line", points };
    default:
      return assertNever(tool);
  }
}

/** Finished as it stands, or null when there is not enough of it yet. */
export function finish(draft: Draft | null): Finished | null {
  if (draft?.kind === "path") return finishPath(draft.tool, draft.points, draft.scaleKind);
  if (draft?.kind === "spot") {
    return { kind: "shape", shape: { kind: "point", at: draft.at, radius: draft.radius } };
  }
  return null;
}

/**
 * One more point of a path. On the last point again (within `reach`, photo pixels) it is finished, on an outline's
 * first point it is closed; a scale is finished by the last point that its object has.
 */
export function placePoint(
  tool: PathTool,
  draft: Draft | null,
  at: PhotoPoint,
  reach: number,
  scaleKind: ScalePickKind = "two-points",
): Step {
  const points = draft?.kind === "path" && draft.tool === tool ? draft.points : [];
  const [first] = points;
  const last = points.at(-1);
  const again = last !== undefined && distance(last, at) <= reach;
  const closes =
    tool === "outline" && points.length >= 3 && first !== undefined && distance(first, at) <= reach;
  if (again || closes) {
    const finished = finishPath(tool, points, scaleKind);
    return finished === null ? going(draft) : done(finished);
  }
  const next = [...points, at];
  if (tool === "scale" && next.length === scalePicks[scaleKind].most)
    return done({ kind: "scale", scaleKind, points: next });
  if (next.length > MOST_POINTS) return going(draft);
  const path = { kind: "path", tool, points: next, next: null } as const;
  return going(tool === "scale" ? { ...path, scaleKind } : path);
}

/** The last placed point taken back; nothing is left after the first. */
export function takeBackPoint(draft: Draft | null): Draft | null {
  if (draft?.kind !== "path") return null;
  const points = draft.points.slice(0, -1);
  return points.length === 0 ? null : { ...draft, points };
}

/**
 * A freehand loop as an outline of few corners. Too small a loop to be meant is none; a loop whose corners all fell
 * to the tolerance is none either.
 */
export function closeFreehand(points: readonly PhotoPoint[], tolerance: number): Finished | null {
  const kept = simplifyPath(points, tolerance);
  const [first] = kept;
  const last = kept.at(-1);
  const open =
    first && last && kept.length > 3 && distance(first, last) <= 4 * tolerance ? kept.slice(0, -1) : kept;
  return open.length > MOST_POINTS ? closeFreehand(points, tolerance * 2) : finishPath("outline", open);
}
