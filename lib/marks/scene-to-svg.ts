import { assertNever } from "@/lib/base";
import type { Point } from "@/lib/geometry";
import { primitives, type Primitive } from "./primitives";
import type { ScenePalette, SceneShape } from "./scene-types";

/** An SVG element as plain data: attribute names as SVG spells them. */
export interface SvgNode {
  readonly tag: "svg" | "path" | "circle" | "rect" | "text";
  readonly attributes: Readonly<Record<string, string | number>>;
  readonly children: readonly (SvgNode | string)[];
}

export interface SvgOptions {
  readonly palette: ScenePalette;
  /** How many screen units the whole picture is wide: the smaller, the larger lines and text come out. */
  readonly acrossUnits: number;
}

/** Hundredths of a photo pixel: finer than any print, and short. */
const short = (value: number): number => Math.round(value * 100) / 100 + 0;

const pathData = (points: readonly Point<"photo">[], closed: boolean): string =>
  points.map((p, i) => `${i === 0 ? "M" : "L"}${short(p.x)} ${short(p.y)}`).join("") + (closed ? "Z" : "");

function strokeAttributes(stroke: string, width: number, dash: readonly number[]) {
  return {
    fill: "none",
    stroke,
    "stroke-width": short(width),
    "stroke-linecap": "round",
    "stroke-linejoin": "round",
    ...(dash.length > 0 ? { "stroke-dasharray": dash.map(short).join(" ") } : {}),
  };
}

function node(primitive: Primitive): SvgNode {
  switch (primitive.kind) {
    case "path": {
      const { points, closed, stroke, width, dash } = primitive;
      const attributes = { d: pathData(points, closed), ...strokeAttributes(stroke, width, dash) };
      return { tag: "path", attributes, children: [] };
    }
    case "circle": {
      const { at, radius, stroke, width, dash } = primitive;
      const circle = { cx: short(at.x), cy: short(at.y), r: short(radius) };
      return {
        tag: "circle",
        attributes: { ...circle, ...strokeAttributes(stroke, width, dash) },
        children: [],
      };
    }
    case "plate":
      return plateNode(primitive);
    case "text":
      return textNode(primitive);
    default:
      return assertNever(primitive);
  }
}

function plateNode(plate: Extract<Primitive, { kind: "plate" }>): SvgNode {
  const attributes = {
    x: short(plate.at.x - plate.width / 2),
    y: short(plate.at.y - plate.height / 2),
    width: short(plate.width),
    height: short(plate.height),
    rx: short(plate.corner),
    fill: plate.fill,
    stroke: plate.stroke,
    "stroke-width": short(plate.strokeWidth),
  };
  return { tag: "rect", attributes, children: [] };
}

function textNode(text: Extract<Primitive, { kind: "text" }>): SvgNode {
  const halo = text.halo !== null && {
    stroke: text.halo,
    "stroke-width": short(text.haloWidth),
    "stroke-linejoin": "round",
    "paint-order": "stroke",
  };
  const attributes = {
    x: short(text.at.x),
    y: short(text.at.y),
    "font-size": short(text.size),
    "font-weight": 600,
    "text-anchor": text.anchor,
    "dominant-baseline": "central",
    fill: text.fill,
    ...(halo || {}),
  };
  return { tag: "text", attributes, children: [text.text] };
}

/**
 * The scene as an SVG tree to lay over the photo: its view box is the photo in pixels, so it fits at any size.
 * Pure: the caller turns the tree into elements or text.
 */
export function sceneToSvg(
  shapes: readonly SceneShape[],
  widthPx: number,
  heightPx: number,
  { palette, acrossUnits }: SvgOptions,
): SvgNode {
  const unitPx = widthPx / acrossUnits;
  return {
    tag: "svg",
    attributes: { xmlns: "http://www.w3.org/2000/svg", viewBox: `0 0 ${widthPx} ${heightPx}` },
    children: primitivesToSvg(shapes.flatMap((shape) => primitives(shape, palette, unitPx))),
  };
}

/** Primitives as SVG elements in the same coordinates, in the same order. */
export const primitivesToSvg = (list: readonly Primitive[]): readonly SvgNode[] => list.map(node);
