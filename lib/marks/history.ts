import type { Drawing } from "./drawing";

/** Snapshots, not differences: a drawing is small and its marks are shared between snapshots. */
export interface History {
  /** Oldest first; the last is what one undo brings back. */
  readonly past: readonly Drawing[];
  readonly present: Drawing;
  /** Nearest first: the first is what one redo brings back. */
  readonly future: readonly Drawing[];
}

/** The oldest step is forgotten beyond this many. */
export const HISTORY_LIMIT = 200;

export function startHistory(drawing: Drawing): History {
  return { past: [], present: drawing, future: [] };
}

/** The same object when the drawing is the same: nothing happened, so nothing can be undone. */
export function advance(history: History, next: Drawing): History {
  if (next === history.present) return history;
  const past = [...history.past, history.present].slice(-HISTORY_LIMIT);
  return { past, present: next, future: [] };
}

export function stepBack(history: History): History {
  const previous = history.past.at(-1);
  if (previous === undefined) return history;
  return {
    past: history.past.slice(0, -1),
    present: previous,
    future: [history.present, ...history.future],
  };
}

export function stepForward(history: History): History {
  const [next, ...future] = history.future;
  if (next === undefined) return history;
  return { past: [...history.past, history.present], present: next, future };
}
