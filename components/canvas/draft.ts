import { assertNever } from "@/lib/base";
import { distance } from "@/lib/geometry";
import { fewestPoints, simplifyPath, type MarkShapeData, type PhotoPoint } from "@/lib/marks";
import type { SectionEdgeRole } from "@/lib/section";
import { scalePicks, type ScalePickKind } from "./scale-picks";
import type { CanvasChange, Tool } from "./types";

export type PathTool = Exclude<Tool, "move" | "point">;

/** What the tool in hand draws, where its name does not say it. */
export interface PathKinds {
  /** Of the scale tool: what is being picked. Left out: two points. */
  readonly scaleKind?: ScalePickKind;
  /** Of the edge tool: which edge. */
  readonly edge?: SectionEdgeRole;
}

/** What is being drawn or dragged and is not yet part of the drawing. Photo pixels. */
export type Draft =
  | { readonly kind: "spot"; readonly at: PhotoPoint; readonly radius: number | null }
  /** Points placed so far, and where the next would go. */
  | ({
      readonly kind: "path";
      readonly tool: PathTool;
      readonly points: readonly PhotoPoint[];
      readonly next: PhotoPoint | null;
      /**
       * Of each stretch between two points, the corners that followed an edge; null while that is looked for. A stretch
       * that has no entry is straight.
       */
      readonly edges?: readonly (readonly PhotoPoint[] | null)[];
    } & PathKinds)
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
  | { readonly kind: "change"; readonly action: CanvasChange };

/** What a finished draft asks for. */
export type Finished =
  | { readonly kind: "shape"; readonly shape: MarkShapeData }
  | {
      readonly kind: "scale";
      readonly scaleKind: ScalePickKind;
      readonly points: readonly PhotoPoint[];
    }
  | { readonly kind: "weld-line"; readonly points: readonly PhotoPoint[] }
  | { readonly kind: "change"; readonly action: CanvasChange };

export interface Step {
  readonly draft: Draft | null;
  readonly finished: Finished | null;
}

const going = (draft: Draft | null): Step => ({ draft, finished: null });
const done = (finished: Finished): Step => ({ draft: null, finished });

/** Points a path needs before it can be finished. */
export function fewestOf(tool: PathTool, scaleKind: ScalePickKind): number {
  if (tool === "scale") return scalePicks[scaleKind].fewest;
  if (tool === "root") return 1;
  return isRing(tool) ? fewestPoints.outline : fewestPoints.line;
}

/** With so many points it is finished by itself. An old joint face may have a bend; the other edges are straight. */
function mostOf(tool: PathTool, { scaleKind = "two-points", edge }: PathKinds): number {
  if (tool === "scale") return scalePicks[scaleKind].most;
  if (tool === "root") return 1;
  return tool === "edge" && edge !== undefined && !edge.startsWith("groove") ? 2 : Infinity;
}

const isRing = (tool: PathTool): boolean => tool === "outline" || tool === "metal";

/** More than a drawing may hold on one mark would be refused; a straight line needs no more anyway. */
export const MOST_PATH_POINTS = 200;

type PathDraft = Extract<Draft, { kind: "path" }>;

/** From each point to the next, with the corners between them. */
export const stretchesOf = ({ points, edges = [] }: PathDraft): readonly (readonly PhotoPoint[])[] =>
  points.slice(1).map((to, i) => [points[i]!, ...(edges[i] ?? []), to]);

/** The points of a path with the corners between them, as the mark would have them. */
export const wholePath = (path: PathDraft): readonly PhotoPoint[] => [
  ...path.points.slice(0, 1),
  ...stretchesOf(path).flatMap((stretch) => stretch.slice(1)),
];

function finishPath(
  tool: PathTool,
  points: readonly PhotoPoint[],
  { scaleKind = "two-points", edge }: PathKinds = {},
): Finished | null {
  if (points.length < fewestOf(tool, scaleKind)) return null;
  const change = (action: CanvasChange): Finished => ({ kind: "change", action });
  switch (tool) {
    case "line":
    case "outline":
      return { kind: "shape", shape: { kind: tool, points: [...points] } };
    case "scale":
      return { kind: "scale", scaleKind, points };
    case "weld-line":
      return { kind: "weld-line", points };
    case "metal":
      return change({ type: "section.outline", points });
    case "edge":
      return edge === undefined ? null : change({ type: "section.edge", role: edge, points });
    case "root":
      return change({ type: "section.root", at: points[0]! });
    default:
      return assertNever(tool);
  }
}

/** Finished as it stands, or null when there is not enough of it yet. */
export function finish(draft: Draft | null): Finished | null {
  if (draft?.kind === "path") return finishPath(draft.tool, wholePath(draft), draft);
  if (draft?.kind === "spot") {
    return { kind: "shape", shape: { kind: "point", at: draft.at, radius: draft.radius } };
  }
  return null;
}

/**
 * One more point of a path. On the last point again (within `reach`, photo pixels) it is finished, on an outline's
 * first point it is closed; a scale, a straight edge and a root are finished by the last point that they have.
 */
export function placePoint(
  tool: PathTool,
  draft: Draft | null,
  at: PhotoPoint,
  reach: number,
  kinds: PathKinds = {},
): Step {
  const path = draft?.kind === "path" && draft.tool === tool ? draft : null;
  const points = path?.points ?? [];
  const [first] = points;
  const last = points.at(-1);
  // Round a cut weld the points stand close, above all at the toes: there only the first point finishes it, and a tap on
  // the last one is a finger that trembled.
  const near = tool === "metal" ? reach / 2 : reach;
  if (tool === "metal" && last !== undefined && distance(last, at) <= reach / 8) return going(draft);
  const again = tool !== "metal" && last !== undefined && distance(last, at) <= near;
  const closes = isRing(tool) && points.length >= 3 && first !== undefined && distance(first, at) <= near;
  if (again || closes) {
    const finished = path && finishPath(tool, wholePath(path), kinds);
    return finished === null ? going(draft) : done(finished);
  }
  const next = [...points, at];
  const finished = next.length === mostOf(tool, kinds) ? finishPath(tool, next, kinds) : null;
  if (finished) return done(finished);
  if ((path ? wholePath(path).length : 0) >= MOST_PATH_POINTS) return going(draft);
  const longer: Draft = { kind: "path", tool, points: next, next: null, ...edgesWithin(path, points.length) };
  const { scaleKind = "two-points", edge } = kinds;
  if (tool === "scale") return going({ ...longer, scaleKind });
  return going(tool === "edge" && edge ? { ...longer, edge } : longer);
}

/** The last placed point taken back; nothing is left after the first. */
export function takeBackPoint(draft: Draft | null): Draft | null {
  if (draft?.kind !== "path") return null;
  const points = draft.points.slice(0, -1);
  return points.length === 0 ? null : { ...draft, points };
}

/** The stretches between the first so many points, where any follows an edge. */
const edgesWithin = (path: Pick<PathDraft, "edges"> | null, count: number) =>
  path?.edges ? { edges: path.edges.slice(0, count - 1) } : {};

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
  return open.length > MOST_PATH_POINTS ? closeFreehand(points, tolerance * 2) : finishPath("outline", open);
}
