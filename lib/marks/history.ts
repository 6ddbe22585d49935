import type { Drawing } from "./drawing";

/**
 * Snapshots, not differences: a drawing is small and its marks are shared between snapshots. `D` is whatever is undone in
 * one line: a drawing with what else belongs to it, or the items of an instructor's layer.
 */
export interface History<D = Drawing> {
  /** Oldest first; the last is what one undo brings back. */
  readonly past: readonly D[];
  readonly present: D;
  /** Nearest first: the first is what one redo brings back. */
  readonly future: readonly D[];
}

/** The oldest step is forgotten beyond this many. */
export const HISTORY_LIMIT = 200;

export function startHistory<D>(drawing: D): History<D> {
  return { past: [], present: drawing, future: [] };
}

/** The same object when the drawing is the same: nothing happened, so nothing can be undone. */
export function advance<D>(history: History<D>, next: D): History<D> {
  if (next === history.present) return history;
  const past = [...history.past, history.present].slice(-HISTORY_LIMIT);
  return { past, present: next, future: [] };
}

export function stepBack<D>(history: History<D>): History<D> {
  const previous = history.past.at(-1);
  if (previous === undefined) return history;
  return {
    past: history.past.slice(0, -1),
    present: previous,
    future: [history.present, ...history.future],
  };
}

export function stepForward<D>(history: History<D>): History<D> {
  const [next, ...future] = history.future;
  if (next === undefined) return history;
  return { past: [...history.past, history.present], present: next, future };
}
