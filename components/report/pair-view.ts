/** How both pictures of a pair are looked at: `k` times as large, their left top corner shifted, in widths of the pane. */
export interface PairView {
  readonly k: number;
  readonly x: number;
  readonly y: number;
}

export const wholePair: PairView = { k: 1, x: 0, y: 0 };

/** Beyond this there is nothing more to see in a picture laid into a pane. */
export const MOST_TIMES = 16;

/** A place in the pane, in widths of it: y runs to `height`. */
export interface PanePlace {
  readonly x: number;
  readonly y: number;
}

const clamp = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));

/** So that the pane is never looked past: the picture covers it. `height` in widths of the pane. */
function held({ k, x, y }: PairView, height: number): PairView {
  const hold = (shift: number, size: number): number => clamp(shift, size * (1 - k), 0);
  return { k, x: hold(x, 1), y: hold(y, height) };
}

/** Larger by a factor; what lies under `at` stays under it as long as the pane stays covered. */
export function zoomPair(view: PairView, factor: number, at: PanePlace, height: number): PairView {
  const k = clamp(view.k * factor, 1, MOST_TIMES);
  const by = k / view.k;
  return held({ k, x: at.x - (at.x - view.x) * by, y: at.y - (at.y - view.y) * by }, height);
}

export function panPair(view: PairView, by: PanePlace, height: number): PairView {
  return held({ ...view, x: view.x + by.x, y: view.y + by.y }, height);
}

/** What of a ruler from one edge of the picture to the other is seen. */
export function rulerSeen(
  { from, to }: { readonly from: number; readonly to: number },
  { k, x }: PairView,
): { readonly from: number; readonly to: number } {
  const at = (share: number): number => from + ((to - from) * (share - x)) / k;
  return { from: at(0), to: at(1) };
}
