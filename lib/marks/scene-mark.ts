import { assertNever } from "@/lib/base";
import type { Point } from "@/lib/geometry";
import { imperfections } from "@/lib/trade";
import type { Mark, MarkShapeData } from "./drawing";
import { pathMiddle } from "./path-middle";
import { groupStyles, type GroupStyle } from "./scene-style";
import type { SceneBadge, SceneLabel, SceneShape } from "./scene-types";

/** Screen units: radius of a spot without a size, how far a badge stands off its line, badge to text. */
const SPOT_RADIUS = 8;
const BADGE_STANDOFF = 20;
export const BADGE_TO_TEXT = 6;

/** The group of a mark's imperfection with its stroke. */
export function markStyle(mark: Mark): GroupStyle {
  return groupStyles[imperfections[mark.imperfection].group];
}

/** Whole width of a badge, screen units: both painters and the label fitter go by it. */
export function badgeWidth(badge: Pick<SceneBadge, "number">): number {
  return 14 + 9 * String(badge.number).length;
}

/** Where the badge hangs: a photo point and the offset from it in screen units. */
function badgePlace(shape: MarkShapeData): { readonly at: Point<"photo">; readonly offset: Point<"view"> } {
  switch (shape.kind) {
    case "point":
      return shape.radius === null
        ? { at: shape.at, offset: { x: 0, y: -(SPOT_RADIUS + BADGE_STANDOFF) } }
        : { at: { x: shape.at.x, y: shape.at.y - shape.radius }, offset: { x: 0, y: -BADGE_STANDOFF } };
    case "line": {
      const { at, along } = pathMiddle(shape.points);
      // Of the two normals the one that points up, or right of an upright line.
      const up = along.x > 0 || (along.x === 0 && along.y > 0) ? 1 : -1;
      return { at, offset: { x: along.y * up * BADGE_STANDOFF, y: -along.x * up * BADGE_STANDOFF } };
    }
    case "outline": {
      const top = shape.points.reduce((a, b) => (b.y < a.y || (b.y === a.y && b.x < a.x) ? b : a));
      return { at: top, offset: { x: 0, y: -BADGE_STANDOFF } };
    }
    default:
      return assertNever(shape);
  }
}

/** The shape itself, without number and text. */
export function markBody(mark: Mark): SceneShape {
  const { stroke } = markStyle(mark);
  const common = { key: `${mark.id}:body`, role: "mark", markId: mark.id, stroke } as const;
  const shape = mark.shape;
  switch (shape.kind) {
    case "point":
      return shape.radius === null
        ? { ...common, kind: "spot", at: shape.at, radius: SPOT_RADIUS }
        : { ...common, kind: "ring", at: shape.at, radius: shape.radius };
    case "line":
    case "outline":
      return { ...common, kind: shape.kind, points: shape.points };
    default:
      return assertNever(shape);
  }
}

/** Badge, and text when there is any. `side` is where the text stands, seen from the badge. */
export function markTags(
  mark: Mark,
  number: number,
  text: string,
  side: "left" | "right",
): readonly (SceneBadge | SceneLabel)[] {
  const { stroke } = markStyle(mark);
  const { at, offset } = badgePlace(mark.shape);
  const common = { role: "mark", markId: mark.id, at } as const;
  const badge: SceneBadge = {
    ...common,
    key: `${mark.id}:badge`,
    kind: "badge",
    offset,
    number,
    ink: stroke.ink,
  };
  if (text === "") return [badge];
  const reach = badgeWidth(badge) / 2 + BADGE_TO_TEXT;
  const labelOffset = { x: offset.x + (side === "right" ? reach : -reach), y: offset.y };
  return [badge, { ...common, key: `${mark.id}:label`, kind: "label", offset: labelOffset, side, text }];
}
