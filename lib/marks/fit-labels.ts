import type { SceneBadge, SceneLabel, SceneShape } from "./scene-types";
import { spotBox } from "./tag-box";
import { startPaper, type PhotoSize } from "./tag-paper";
import { badgePlaces, labelPlaces } from "./tag-places";

/**
 * The scene with its numbers and words where they can be read at this zoom: inside the photo, when its size is given,
 * apart from each other, and on no pore. Numbers always stay, so a crowded bead is still counted right; words that
 * find no free place are left out, and zooming in brings them back. The first wins, `favoured` (a mark's id) before
 * all, and its words stay whatever is in the way. Greedy: the first free place of a short list, each in turn.
 */
export function fitLabels(
  shapes: readonly SceneShape[],
  unitPx: number,
  favoured: string | null = null,
  photo: PhotoSize | null = null,
): readonly SceneShape[] {
  const first = <T extends SceneShape>(tags: readonly T[]): readonly T[] => [
    ...tags.filter((tag) => tag.markId !== null && tag.markId === favoured),
    ...tags.filter((tag) => tag.markId === null || tag.markId !== favoured),
  ];
  const spots = shapes.filter((shape) => shape.kind === "ring" || shape.kind === "spot");
  const paper = startPaper(
    unitPx,
    photo,
    spots.map((spot) => spotBox(spot, unitPx)),
  );
  const bodies = new Map(shapes.filter((s) => s.key.endsWith(":body")).map((s) => [s.markId, s]));
  const badges = new Map<string | null, SceneBadge>();
  for (const badge of first(shapes.filter((s) => s.kind === "badge"))) {
    const placed = paper.put(badgePlaces(badge, bodies.get(badge.markId)));
    badges.set(badge.markId, placed ?? paper.force(badge));
  }
  const labels = new Map<string, SceneLabel>();
  for (const label of first(shapes.filter((s) => s.kind === "label"))) {
    const places = labelPlaces(label, badges.get(label.markId));
    const mustStay = favoured !== null && label.markId === favoured;
    const placed = paper.put(places) ?? (mustStay ? paper.force(places[0]!) : null);
    if (placed) labels.set(label.key, placed);
  }
  return shapes.flatMap((shape): readonly SceneShape[] => {
    if (shape.kind === "badge") return [badges.get(shape.markId) ?? shape];
    if (shape.kind !== "label") return [shape];
    const label = labels.get(shape.key);
    return label ? [label] : [];
  });
}
