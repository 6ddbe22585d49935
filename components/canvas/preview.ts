import { add, length, subtract, times, type Point } from "@/lib/geometry";
import type { MarkShapeData, SceneShape } from "@/lib/marks";
import { finish, type Draft } from "./draft";
import { withLooseEnd, type Stretch } from "./followed";
import { isSectionAction } from "./words";

const nothing = (): boolean => false;
const scalePart = (shape: SceneShape): boolean => shape.role === "scale";
const sectionPart = (shape: SceneShape): boolean => shape.role === "section";
const weldLinePart = (shape: SceneShape): boolean => shape.role === "weld-line";
const markParts = new Map<string, (shape: SceneShape) => boolean>();

/**
 * Which shapes the hand is holding: they are painted with the draft, so that the layer of marks stays as it is while
 * one of them is dragged. The same function for the same id, so that what is memoised by it stays memoised.
 */
export function shapesInHand(draft: Draft | null): (shape: SceneShape) => boolean {
  if (draft?.kind !== "change") return nothing;
  const { action } = draft;
  if (isSectionAction(action)) return sectionPart;
  if (action.type === "scale.set") return scalePart;
  if (action.type === "weldLine.set") return weldLinePart;
  if (!("id" in action)) return nothing;
  const known = markParts.get(action.id);
  if (known) return known;
  const part = (shape: SceneShape): boolean => shape.markId === action.id;
  markParts.clear(); // one hand holds one mark
  markParts.set(action.id, part);
  return part;
}

/** The mark that is being dragged; undefined where it is something else, or nothing. */
export function markInHand(draft: Draft | null): string | undefined {
  return draft?.kind === "change" && "id" in draft.action ? draft.action.id : undefined;
}

/** The size, in words, of what is being drawn; empty when it has none yet or nobody gives one. */
export function shapeOfDraft(
  draft: Draft | null,
  label: ((shape: MarkShapeData) => string) | undefined,
  shown: Stretch | null = null,
): string {
  if (label === undefined || draft === null) return "";
  if (draft.kind === "unnamed") return label(draft.shape);
  const loose = draft.kind === "path" ? withLooseEnd(draft, shown) : draft;
  const finished = loose.kind === "path" && loose.tool === "scale" ? null : finish(loose);
  return finished?.kind === "shape" ? label(finished.shape) : "";
}

/**
 * What the magnifier shows: the place under the finger, but of a spot whose size is being set the rim nearest to it,
 * which may lie well off the finger.
 */
export function loupeCentre(finger: Point<"photo">, draft: Draft | null): Point<"photo"> {
  if (draft?.kind !== "change" || draft.action.type !== "mark.replaceShape") return finger;
  const { shape } = draft.action;
  if (shape.kind !== "point" || shape.radius === null) return finger;
  const out = subtract(finger, shape.at);
  const reach = length(out);
  return reach > 0 ? add(shape.at, times(out, shape.radius / reach)) : finger;
}
