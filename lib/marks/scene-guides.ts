import { assertNever } from "@/lib/base";
import { centroidOf, convexHull, type Point } from "@/lib/geometry";
import type { Scale } from "./drawing";
import { directionFrom, pathMiddle } from "./path-middle";
import { scalePoints } from "./scale-points";
import { scaleStroke, weldLineStroke } from "./scene-style";
import type { SceneLabel, SceneShape, SceneTick } from "./scene-types";

/** Screen units. */
const MEASURE_TICK = 18;
const WELD_TICK = 26;
const LABEL_STANDOFF = 18;

const scaleCommon = { role: "scale", markId: null, stroke: scaleStroke } as const;
const weldCommon = { role: "weld-line", markId: null } as const;

/** A length in millimetres with no more figures than were put in, at most two after the point. */
const millimetres = (value: number): string => String(Number(value.toFixed(2)));

/** "25 mm", "20 × 40 mm", "Ø 24 mm": what the scale says when the caller has nothing better. */
export function scaleWords(scale: Scale): string {
  switch (scale.kind) {
    case "two-points":
      return `${millimetres(scale.lengthMm)} mm`;
    case "rectangle":
    case "edges":
      return `${millimetres(scale.widthMm)} × ${millimetres(scale.heightMm)} mm`;
    case "disc":
      return `Ø ${millimetres(scale.diameterMm)} mm`;
    case "strip":
      return "scale strip";
    default:
      return assertNever(scale);
  }
}

/** The bar with a tick at each end, or the figure that was picked, and the stated size beside it. */
export function scaleShapes(scale: Scale, text: string): readonly SceneShape[] {
  const label: SceneLabel = {
    key: "scale:label",
    role: "scale",
    markId: null,
    kind: "label",
    at: labelPlace(scale),
    offset: { x: 0, y: -LABEL_STANDOFF },
    side: "middle",
    text,
  };
  return [...scaleFigure(scale), label];
}

function labelPlace(scale: Scale): Point<"photo"> {
  const points = scalePoints(scale);
  if (scale.kind === "two-points" || scale.kind === "rectangle" || scale.kind === "edges") {
    return pathMiddle(points.slice(0, 2)).at;
  }
  return points.reduce((a, b) => (b.y < a.y ? b : a));
}

function scaleFigure(scale: Scale): readonly SceneShape[] {
  switch (scale.kind) {
    case "two-points":
      return [
        { ...scaleCommon, key: "scale:bar", kind: "line", points: [scale.a, scale.b] },
        measureTick("scale:a", scale.a, scale.b),
        measureTick("scale:b", scale.b, scale.a),
      ];
    case "rectangle":
      return [{ ...scaleCommon, key: "scale:rectangle", kind: "outline", points: scale.corners }];
    case "edges":
      return scale.edges.map((edge, i) => ({
        ...scaleCommon,
        key: `scale:edge-${i}`,
        kind: "line",
        points: edge,
      }));
    case "disc":
      return [{ ...scaleCommon, key: "scale:disc", kind: "outline", points: aroundMiddle(scale.rim) }];
    case "strip":
      return [
        { ...scaleCommon, key: "scale:strip", kind: "outline", points: convexHull(scalePoints(scale)) },
      ];
    default:
      return assertNever(scale);
  }
}

function measureTick(key: string, at: Point<"photo">, from: Point<"photo">): SceneTick {
  const along = directionFrom(from, at);
  return { ...scaleCommon, key, kind: "tick", at, along, length: MEASURE_TICK, end: "measure" };
}

/** Picks on a rim come in any order; drawn, they go round. */
function aroundMiddle(rim: readonly Point<"photo">[]): readonly Point<"photo">[] {
  const middle = centroidOf(rim);
  const angle = (p: Point<"photo">): number => Math.atan2(p.y - middle.y, p.x - middle.x);
  return [...rim].sort((a, b) => angle(a) - angle(b));
}

function weldEnd(end: "start" | "crater", at: Point<"photo">, from: Point<"photo">): readonly SceneShape[] {
  const stroke = { ...weldLineStroke, width: 2.5, dash: [] };
  const along = directionFrom(from, at);
  const offset = { x: 0, y: WELD_TICK };
  return [
    { ...weldCommon, key: `weld:${end}`, kind: "tick", at, along, length: WELD_TICK, end, stroke },
    { ...weldCommon, key: `weld:${end}-word`, kind: "label", at, offset, side: "middle", text: end },
  ];
}

/** The weld's middle line with a bar at its start, a dish at its crater, and both words. */
export function weldLineShapes(points: readonly Point<"photo">[]): readonly SceneShape[] {
  const [first, second] = points;
  const [beforeLast, last] = points.slice(-2);
  if (!first || !second || !last || !beforeLast) return [];
  return [
    { ...weldCommon, key: "weld:line", kind: "line", points, stroke: weldLineStroke },
    ...weldEnd("start", first, second),
    ...weldEnd("crater", last, beforeLast),
  ];
}
