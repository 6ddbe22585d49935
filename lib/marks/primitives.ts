import { assertNever } from "@/lib/base";
import type { Point } from "@/lib/geometry";
import { badgeWidth } from "./scene-mark";
import type { SceneBadge, SceneLabel, ScenePalette, SceneShape, SceneTick, Stroke } from "./scene-types";

/**
 * What a painter must know how to do, and nothing of welds: four shapes, every length in photo pixels, every colour
 * a CSS colour. Canvas and SVG paint the same list, so that what is on screen is what is printed.
 */
export type Primitive =
  | {
      readonly kind: "path";
      readonly points: readonly Point<"photo">[];
      readonly closed: boolean;
      readonly stroke: string;
      readonly width: number;
      readonly dash: readonly number[];
    }
  | {
      readonly kind: "circle";
      readonly at: Point<"photo">;
      readonly radius: number;
      readonly stroke: string;
      readonly width: number;
      readonly dash: readonly number[];
    }
  | {
      readonly kind: "plate";
      readonly at: Point<"photo">;
      readonly width: number;
      readonly height: number;
      readonly corner: number;
      readonly fill: string;
      readonly stroke: string;
      readonly strokeWidth: number;
    }
  | {
      readonly kind: "text";
      readonly at: Point<"photo">;
      readonly text: string;
      readonly size: number;
      readonly anchor: "start" | "middle" | "end";
      readonly fill: string;
      /** Drawn under the letters; null on a plate. */
      readonly halo: string | null;
      readonly haloWidth: number;
    };

/** Screen units. */
const CASING = 2;
const BADGE_HEIGHT = 20;
export const BADGE_TEXT = 15;
export const LABEL_TEXT = 15;
/** A letter's mean width over its height, for the text face at weight 600; a little generous. */
export const LETTER_WIDTH = 0.56;

/** Where something stands off a photo point by so many screen units. `unitPx`: photo pixels per screen unit. */
export const offsetBy = (at: Point<"photo">, offset: Point<"view">, unitPx: number): Point<"photo"> => ({
  x: at.x + offset.x * unitPx,
  y: at.y + offset.y * unitPx,
});

type Inked =
  | { readonly kind: "path"; readonly points: readonly Point<"photo">[]; readonly closed: boolean }
  | { readonly kind: "circle"; readonly at: Point<"photo">; readonly radius: number };

/** The casing, unbroken and wider, then the ink on it. */
function cased(figure: Inked, stroke: Stroke, palette: ScenePalette, unitPx: number): readonly Primitive[] {
  const ink = palette.inks[stroke.ink];
  return [
    { ...figure, stroke: ink.casing, width: (stroke.width + 2 * CASING) * unitPx, dash: [] },
    {
      ...figure,
      stroke: ink.line,
      width: stroke.width * unitPx,
      dash: stroke.dash.map((length) => length * unitPx),
    },
  ];
}

/** The bar across the end; a crater gets a dish beyond it, a half ring open to the bead. */
function tickFigures(tick: SceneTick, unitPx: number): readonly Inked[] {
  const half = (tick.length / 2) * unitPx;
  const { x, y } = tick.along;
  const across = (t: number): Point<"photo"> => ({
    x: tick.at.x - y * t * half,
    y: tick.at.y + x * t * half,
  });
  const bar: Inked = { kind: "path", points: [across(-1), across(1)], closed: false };
  if (tick.end !== "crater") return [bar];
  const dish = Array.from({ length: 13 }, (_, i) => {
    const angle = ((i - 6) / 6) * (Math.PI / 2);
    const out = Math.cos(angle) * half * 0.6;
    const side = across(Math.sin(angle));
    return { x: side.x + x * out, y: side.y + y * out };
  });
  return [bar, { kind: "path", points: dish, closed: false }];
}

function badgePrimitives(badge: SceneBadge, palette: ScenePalette, unitPx: number): readonly Primitive[] {
  const ink = palette.inks[badge.ink];
  const at = offsetBy(badge.at, badge.offset, unitPx);
  return [
    {
      kind: "plate",
      at,
      width: badgeWidth(badge) * unitPx,
      height: BADGE_HEIGHT * unitPx,
      corner: 3 * unitPx,
      fill: ink.line,
      stroke: ink.casing,
      strokeWidth: 2 * unitPx,
    },
    {
      kind: "text",
      at,
      text: String(badge.number),
      size: BADGE_TEXT * unitPx,
      anchor: "middle",
      fill: ink.onLine,
      halo: null,
      haloWidth: 0,
    },
  ];
}

function labelPrimitive(label: SceneLabel, palette: ScenePalette, unitPx: number): Primitive {
  return {
    kind: "text",
    at: offsetBy(label.at, label.offset, unitPx),
    text: label.text,
    size: LABEL_TEXT * unitPx,
    anchor: label.side === "middle" ? "middle" : label.side === "right" ? "start" : "end",
    fill: palette.text,
    halo: palette.halo,
    haloWidth: 5 * unitPx,
  };
}

/** One scene shape as primitives, in painting order. `unitPx`: photo pixels per screen unit (1 / zoom). */
export function primitives(shape: SceneShape, palette: ScenePalette, unitPx: number): readonly Primitive[] {
  switch (shape.kind) {
    case "line":
    case "outline": {
      const path = { kind: "path", points: shape.points, closed: shape.kind === "outline" } as const;
      return cased(path, shape.stroke, palette, unitPx);
    }
    case "ring":
      return cased({ kind: "circle", at: shape.at, radius: shape.radius }, shape.stroke, palette, unitPx);
    case "spot": {
      const r = shape.radius * unitPx;
      const arm = (dx: number, dy: number): Inked => ({
        kind: "path",
        points: [offsetBy(shape.at, { x: dx, y: dy }, -r), offsetBy(shape.at, { x: dx, y: dy }, r)],
        closed: false,
      });
      const cross = { ...shape.stroke, dash: [] };
      return [arm(1, 0), arm(0, 1)].flatMap((figure) => cased(figure, cross, palette, unitPx));
    }
    case "tick":
      return tickFigures(shape, unitPx).flatMap((figure) => cased(figure, shape.stroke, palette, unitPx));
    case "badge":
      return badgePrimitives(shape, palette, unitPx);
    case "label":
      return [labelPrimitive(shape, palette, unitPx)];
    default:
      return assertNever(shape);
  }
}
