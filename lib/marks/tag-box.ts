import type { Point } from "@/lib/geometry";
import { LABEL_TEXT, LETTER_WIDTH } from "./primitives";
import { badgeWidth } from "./scene-mark";
import type { SceneBadge, SceneLabel, SceneRing, SceneSpot } from "./scene-types";

/** A rectangle in screen units at one zoom, the photo's top left corner at (0, 0). */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

const LINE_HEIGHT = 18;
const BADGE_HEIGHT = 22;

/** Boxes that only touch lie apart. */
export const overlaps = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

export const isInside = (box: Box, room: Box): boolean =>
  box.left >= room.left && box.top >= room.top && box.right <= room.right && box.bottom <= room.bottom;

/** The room a number or a label takes at this zoom. */
export function tagBox(tag: SceneBadge | SceneLabel, unitPx: number): Box {
  const x = tag.at.x / unitPx + tag.offset.x;
  const y = tag.at.y / unitPx + tag.offset.y;
  const isBadge = tag.kind === "badge";
  const width = isBadge ? badgeWidth(tag) : tag.text.length * LABEL_TEXT * LETTER_WIDTH;
  const half = (isBadge ? BADGE_HEIGHT : LINE_HEIGHT) / 2;
  const side = isBadge ? "middle" : tag.side;
  const left = side === "right" ? x : side === "left" ? x - width : x - width / 2;
  return { left, top: y - half, right: left + width, bottom: y + half };
}

/** The room a spot or a ring takes: what covers it hides the imperfection. */
export function spotBox(spot: SceneRing | SceneSpot, unitPx: number): Box {
  const radius = spot.kind === "spot" ? spot.radius : spot.radius / unitPx;
  const [x, y] = [spot.at.x / unitPx, spot.at.y / unitPx];
  return { left: x - radius, top: y - radius, right: x + radius, bottom: y + radius };
}

/** The least shift, screen units, that brings a box into the room; a box too large for it keeps its left and top in. */
export function shiftInto(box: Box, room: Box): Point<"view"> {
  const shift = (low: number, high: number, least: number, most: number): number =>
    low < least ? least - low : high > most ? Math.max(most - high, least - low) : 0;
  return {
    x: shift(box.left, box.right, room.left, room.right),
    y: shift(box.top, box.bottom, room.top, room.bottom),
  };
}
