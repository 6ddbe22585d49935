import { advance, startHistory, stepBack, stepForward, type History } from "@/lib/marks";
import { counted, uncounted } from "./counts-as";
import type { LayerItem } from "./layer";

/** The items over one photo while they are being drawn. Never stored: only `present` is. */
export type LayerHistory = History<readonly LayerItem[]>;

export type LayerAction =
  | { readonly type: "add"; readonly item: LayerItem }
  | { readonly type: "words"; readonly id: string; readonly words: string }
  /** Its words stay and count as nothing. */
  | { readonly type: "uncount"; readonly id: string }
  | { readonly type: "move"; readonly id: string; readonly dx: number; readonly dy: number }
  | { readonly type: "remove"; readonly id: string }
  | { readonly type: "undo" }
  | { readonly type: "redo" };

export const startLayer = (items: readonly LayerItem[]): LayerHistory => startHistory(items);

/** One step; the same history when nothing changes, so that an undo never does nothing. */
export function editLayer(history: LayerHistory, action: LayerAction): LayerHistory {
  if (action.type === "undo") return stepBack(history);
  if (action.type === "redo") return stepForward(history);
  return advance(history, edited(history.present, action));
}

function edited(
  items: readonly LayerItem[],
  action: Exclude<LayerAction, { type: "undo" | "redo" }>,
): readonly LayerItem[] {
  if (action.type === "add") return [...items, counted(action.item)];
  if (!items.some(({ id }) => id === action.id)) return items;
  switch (action.type) {
    case "remove":
      return items.filter(({ id }) => id !== action.id);
    case "words":
      return items.map((item) => (item.id === action.id ? withWords(item, action.words) : item));
    case "uncount":
      return items.map((item) => (item.id === action.id ? uncounted(item) : item));
    case "move":
      return items.map((item) => (item.id === action.id ? movedBy(item, action.dx, action.dy) : item));
  }
}

/** Shapes without words stay as they are; a text is never left empty: it would be there and not seen. */
function withWords(item: LayerItem, words: string): LayerItem {
  if (item.kind === "arrow") return counted({ ...item, words });
  return item.kind === "text" && words.trim() !== "" ? counted({ ...item, words: words.trim() }) : item;
}

function movedBy(item: LayerItem, dx: number, dy: number): LayerItem {
  const move = (p: { x: number; y: number }) => ({ x: p.x + dx, y: p.y + dy });
  switch (item.kind) {
    case "arrow":
      return { ...item, from: move(item.from), to: move(item.to) };
    case "text":
      return { ...item, at: move(item.at) };
    default:
      return { ...item, points: item.points.map(move) };
  }
}
