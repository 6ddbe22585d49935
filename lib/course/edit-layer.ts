import type { LayerItem } from "./layer";

/** The items over one photo while they are being drawn. Never stored: only `present` is. */
export interface LayerHistory {
  readonly past: readonly (readonly LayerItem[])[];
  readonly present: readonly LayerItem[];
  readonly future: readonly (readonly LayerItem[])[];
}

export type LayerAction =
  | { readonly type: "add"; readonly item: LayerItem }
  | { readonly type: "words"; readonly id: string; readonly words: string }
  | { readonly type: "move"; readonly id: string; readonly dx: number; readonly dy: number }
  | { readonly type: "remove"; readonly id: string }
  | { readonly type: "undo" }
  | { readonly type: "redo" };

/** The oldest step is forgotten beyond this many. */
const MOST_STEPS = 200;

export const startLayer = (items: readonly LayerItem[]): LayerHistory => ({
  past: [],
  present: items,
  future: [],
});

/** One step; the same history when nothing changes, so that an undo never does nothing. */
export function editLayer(history: LayerHistory, action: LayerAction): LayerHistory {
  const { past, present, future } = history;
  if (action.type === "undo") {
    const before = past.at(-1);
    return before ? { past: past.slice(0, -1), present: before, future: [present, ...future] } : history;
  }
  if (action.type === "redo") {
    const [next, ...rest] = future;
    return next ? { past: [...past, present], present: next, future: rest } : history;
  }
  const next = edited(present, action);
  return next === present
    ? history
    : { past: [...past, present].slice(-MOST_STEPS), present: next, future: [] };
}

function edited(
  items: readonly LayerItem[],
  action: Exclude<LayerAction, { type: "undo" | "redo" }>,
): readonly LayerItem[] {
  if (action.type === "add") return [...items, action.item];
  if (!items.some(({ id }) => id === action.id)) return items;
  switch (action.type) {
    case "remove":
      return items.filter(({ id }) => id !== action.id);
    case "words":
      return items.map((item) => (item.id === action.id ? withWords(item, action.words) : item));
    case "move":
      return items.map((item) => (item.id === action.id ? movedBy(item, action.dx, action.dy) : item));
  }
}

/** Shapes without words stay as they are; a text is never left empty: it would be there and not seen. */
function withWords(item: LayerItem, words: string): LayerItem {
  if (item.kind === "arrow") return { ...item, words };
  return item.kind === "text" && words.trim() !== "" ? { ...item, words: words.trim() } : item;
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
