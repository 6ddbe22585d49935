import { badgeWidth } from "./scene-mark";
import { LABEL_TEXT } from "./primitives";
import type { SceneBadge, SceneLabel, SceneShape } from "./scene-types";

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** A letter's mean width over its height, for the text face at weight 600; a little generous. */
const LETTER_WIDTH = 0.56;
const LINE_HEIGHT = 18;

const overlaps = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** The room a tag takes in screen units at this zoom. */
function tagBox(tag: SceneBadge | SceneLabel, unitPx: number): Box {
  const x = tag.at.x / unitPx + tag.offset.x;
  const y = tag.at.y / unitPx + tag.offset.y;
  const width = tag.kind === "badge" ? badgeWidth(tag) : tag.text.length * LABEL_TEXT * LETTER_WIDTH;
  const side = tag.kind === "badge" ? "middle" : tag.side;
  const left = side === "right" ? x : side === "left" ? x - width : x - width / 2;
  return { left, top: y - LINE_HEIGHT / 2, right: left + width, bottom: y + LINE_HEIGHT / 2 };
}

/**
 * The scene without the words that would lie on others at this zoom: the first wins, `favoured` (a mark's id) before
 * all. Numbers always stay, so a crowded bead is still counted right; zooming in brings the words back.
 */
export function fitLabels(
  shapes: readonly SceneShape[],
  unitPx: number,
  favoured: string | null = null,
): readonly SceneShape[] {
  const taken = shapes.filter((s) => s.kind === "badge").map((badge) => tagBox(badge, unitPx));
  const labels = shapes.filter((s) => s.kind === "label");
  const isFavoured = (label: SceneLabel): boolean => favoured !== null && label.markId === favoured;
  const dropped = new Set<string>();
  for (const label of [...labels.filter(isFavoured), ...labels.filter((l) => !isFavoured(l))]) {
    const box = tagBox(label, unitPx);
    if (!isFavoured(label) && taken.some((other) => overlaps(box, other))) dropped.add(label.key);
    else taken.push(box);
  }
  return shapes.filter((shape) => !dropped.has(shape.key));
}
