import { highlight } from "@/components/picture";
import { assertNever } from "@/lib/base";
import type { Point } from "@/lib/geometry";
import type { MarkShapeData, Primitive, SceneShape } from "@/lib/marks";
import { wholePath, type Draft } from "./draft";
import { looseCorners, type Stretch } from "./followed";
import type { Handle } from "./handles";
import { scaleStrokes } from "./scale-picks";

/** A filled disc; sizes in photo pixels. */
function disc(
  at: Point<"photo">,
  radius: number,
  fill: string,
  stroke: string,
  strokeWidth: number,
): Primitive {
  return {
    kind: "plate",
    at,
    width: 2 * radius,
    height: 2 * radius,
    corner: radius,
    fill,
    stroke,
    strokeWidth,
  };
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
  const rubber =
    last && next && joins
      ? drafted(path([last, ...looseCorners(draft, shown), next], false), unitPx, [6, 6])
      : [];
  // Larger dots are those that finish it when tapped: the last, and on an outline the first.
  const finishes = (i: number): boolean =>
    i === points.length - 1 || ((draft.tool === "outline" || draft.tool === "metal") && i === 0);
  const dots = points.map((p, i) =>
    disc(p, (finishes(i) ? 9 : 5) * unitPx, highlight.light, highlight.line, 2.5 * unitPx),
  );
  const strokes = scaleKind === undefined ? [wholePath(draft)] : scaleStrokes(scaleKind, points);
  return [...strokes.flatMap((stroke) => drafted(path(stroke, false), unitPx)), ...rubber, ...dots];
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
        ...draft.points.map((p) => disc(p, 7 * unitPx, highlight.light, highlight.line, 2.5 * unitPx)),
      ];
    default:
      return assertNever(draft);
  }
}

/** Drawn small; the area that answers to a finger is far larger (see `handleAt`). The picked one is filled. */
export function handlePicture(
  handles: readonly Handle[],
  pickedKey: string | null,
  unitPx: number,
): readonly Primitive[] {
  return handles.flatMap(({ key, at, role, stem }) => {
    const isPicked = key === pickedKey;
    const radius = role === "between" ? 5 : isPicked ? 11 : 8;
    const fill = isPicked || role === "radius" ? highlight.fill : highlight.light;
    const knob = disc(at, radius * unitPx, fill, highlight.line, 2.5 * unitPx);
    return stem ? [...drafted(path([stem, at], false), unitPx), knob] : [knob];
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
