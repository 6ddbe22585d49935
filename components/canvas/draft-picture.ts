import { pixelPicture } from "@/components/canvas-kit";
import { highlight } from "@/components/picture";
import { assertNever } from "@/lib/base";
import { add, distance, pointAlong, polylineLength, subtract, times, type Point } from "@/lib/geometry";
import type { MarkShapeData, Primitive, SceneShape } from "@/lib/marks";
import { stretchesOf, type Draft } from "./draft";
import { looseCorners, type Stretch } from "./followed";
import type { Handle } from "./handles";
import { scaleStrokes } from "./scale-picks";

/** A hollow ring: ink, within it `ink`. Radius in CSS pixels. */
function ring(at: Point<"photo">, radius: number, ink: string, unitPx: number): readonly Primitive[] {
  const circle = { kind: "circle" as const, at, radius: radius * unitPx, dash: [] };
  return [
    { ...circle, stroke: highlight.line, width: 6 * unitPx },
    { ...circle, stroke: ink, width: 3 * unitPx },
  ];
}

/** Where a line from outside meets a ring about `at`. */
const rimTowards = (at: Point<"photo">, from: Point<"photo">, radius: number): Point<"photo"> =>
  add(at, times(subtract(from, at), radius / distance(at, from)));

/** A line without so much of its beginning and its end; none where nothing is left. */
function within(
  points: readonly Point<"photo">[],
  fromStart: number,
  fromEnd: number,
): readonly Point<"photo">[] {
  const long = polylineLength(points);
  const [first, last] = [pointAlong(points, fromStart), pointAlong(points, long - fromEnd)];
  if (long <= fromStart + fromEnd || !first || !last) return [];
  let along = 0;
  const between = points.filter((point, i) => {
    along += i > 0 ? distance(points[i - 1]!, point) : 0;
    return along > fromStart && along < long - fromEnd;
  });
  return [first, ...between, last];
}

type Figure =
  | { readonly kind: "path"; readonly points: readonly Point<"photo">[]; readonly closed: boolean }
  | { readonly kind: "circle"; readonly at: Point<"photo">; readonly radius: number };

/** Straw on ink, the other way round from a mark: what is not yet in the drawing looks like it. */
function drafted(figure: Figure, unitPx: number, dash: readonly number[] = []): readonly Primitive[] {
  return [
    { ...figure, stroke: highlight.line, width: 6 * unitPx, dash: [] },
    { ...figure, stroke: highlight.fill, width: 2.5 * unitPx, dash: dash.map((length) => length * unitPx) },
  ];
}

const path = (points: readonly Point<"photo">[], closed: boolean): Figure => ({
  kind: "path",
  points,
  closed,
});

function shapeFigure(shape: MarkShapeData, unitPx: number): Figure {
  return shape.kind === "point"
    ? { kind: "circle", at: shape.at, radius: shape.radius ?? 9 * unitPx }
    : path(shape.points, shape.kind === "outline");
}

function pathPicture(
  draft: Extract<Draft, { kind: "path" }>,
  unitPx: number,
  shown: Stretch | null,
): readonly Primitive[] {
  const { points, next, scaleKind } = draft;
  const last = points.at(-1);
  // Picks on a rim, and on one edge after the other, are not joined.
  const joins =
    scaleKind === undefined ||
    scaleStrokes(scaleKind, [...points, next])
      .at(-1)
      ?.at(-1) === next;
  // Larger dots are those that finish it when tapped: the last, and on an outline the first.
  const finishes = (i: number): boolean =>
    i === points.length - 1 || ((draft.tool === "outline" || draft.tool === "metal") && i === 0);
  const radius = (i: number): number => (finishes(i) ? 10 : 6);
  const dots = points.flatMap((p, i) => ring(p, radius(i), highlight.light, unitPx));
  const line = (stroke: readonly Point<"photo">[], dash: readonly number[] = []) =>
    stroke.length < 2 ? [] : drafted(path(stroke, false), unitPx, dash);
  const loose = last && next && joins ? [last, ...looseCorners(draft, shown), next] : [];
  const rubber = line(within(loose, radius(points.length - 1) * unitPx, 0), [6, 6]);
  // No line runs into a ring: the spot that a point stands on stays in sight.
  const strokes =
    scaleKind === undefined
      ? stretchesOf(draft).map((one, i) => within(one, radius(i) * unitPx, radius(i + 1) * unitPx))
      : scaleStrokes(scaleKind, points);
  return [...strokes.flatMap((stroke) => line(stroke)), ...rubber, ...dots];
}

/** What is being drawn, as primitives in photo pixels. */
export function draftPicture(
  draft: Draft | null,
  unitPx: number,
  shown: Stretch | null = null,
): readonly Primitive[] {
  switch (draft?.kind) {
    case undefined:
    case "change":
      return [];
    case "spot":
      return drafted(shapeFigure({ ...draft, kind: "point" }, unitPx), unitPx);
    case "path":
      return pathPicture(draft, unitPx, shown);
    case "freehand":
      return drafted(path(draft.points, false), unitPx);
    case "unnamed":
      return drafted(shapeFigure(draft.shape, unitPx), unitPx);
    case "unmeasured":
      return [
        ...scaleStrokes(draft.scaleKind, draft.points).flatMap((s) => drafted(path(s, false), unitPx)),
        ...draft.points.flatMap((p) => ring(p, 8, highlight.light, unitPx)),
      ];
    default:
      return assertNever(draft);
  }
}

/**
 * Drawn small and hollow: what it stands on stays in sight. The area that answers to a finger is far larger (see `handleAt`).
 * The picked one is larger, in straw.
 */
export function handlePicture(
  handles: readonly Handle[],
  pickedKey: string | null,
  unitPx: number,
): readonly Primitive[] {
  return handles.flatMap(({ key, at, role, stem }) => {
    const isPicked = key === pickedKey;
    const radius = role === "between" ? 6 : isPicked ? 14 : 10;
    const ink = isPicked || role === "radius" ? highlight.fill : highlight.light;
    const knob = [...ring(at, radius, ink, unitPx), ...(role === "point" ? pixelPicture(at, unitPx) : [])];
    return stem && distance(stem, at) > radius * unitPx
      ? [...drafted(path([stem, rimTowards(at, stem, radius * unitPx)], false), unitPx), ...knob]
      : knob;
  });
}

/** A broad straw band under the body of what is selected. */
export function selectionPicture(shapes: readonly SceneShape[], selectedId: string | null, unitPx: number) {
  return shapes.flatMap((shape): readonly Primitive[] => {
    if (selectedId === null || shape.markId !== selectedId) return [];
    const band = { stroke: highlight.fill, width: 12 * unitPx, dash: [] };
    if (shape.kind === "line" || shape.kind === "outline") {
      return [{ ...band, kind: "path", points: shape.points, closed: shape.kind === "outline" }];
    }
    // Round a pore the band lies outside, so that the pore itself stays in sight.
    if (shape.kind === "ring") {
      return [
        { ...band, kind: "circle", at: shape.at, radius: shape.radius + 5 * unitPx, width: 8 * unitPx },
      ];
    }
    if (shape.kind === "spot") {
      return [{ ...band, kind: "circle", at: shape.at, radius: (shape.radius + 4) * unitPx }];
    }
    return [];
  });
}
