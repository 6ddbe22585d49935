import type { LinkCost } from "./link-cost";

export interface CheapPath {
  /** Pixels from start to end, both among them. */
  readonly cells: readonly number[];
  readonly cost: number;
}

/**
 * The cheapest way over the eight neighbours of each pixel. Dijkstra 1959, with a binary heap in which a pixel may stand
 * more than once: an entry that has become too dear is passed over.
 */
export function cheapestPath(
  columns: number,
  rows: number,
  start: number,
  end: number,
  cost: LinkCost,
): CheapPath {
  const best = new Float64Array(columns * rows).fill(Infinity);
  const before = new Int32Array(columns * rows).fill(-1);
  const isDone = new Uint8Array(columns * rows);
  const open = new Heap();
  best[start] = 0;
  open.push(start, 0);
  for (let here = open.pop(); here >= 0 && here !== end; here = open.pop()) {
    if (isDone[here]) continue;
    isDone[here] = 1;
    const [x, y] = [here % columns, Math.floor(here / columns)];
    for (let j = Math.max(0, y - 1); j <= Math.min(rows - 1, y + 1); j++)
      for (let i = Math.max(0, x - 1); i <= Math.min(columns - 1, x + 1); i++) {
        const next = j * columns + i;
        if (isDone[next]) continue;
        const sum = best[here]! + cost(here, next);
        if (sum >= best[next]!) continue;
        best[next] = sum;
        before[next] = here;
        open.push(next, sum);
      }
  }
  const cells = [end];
  for (let cell = before[end]!; cell >= 0; cell = before[cell]!) cells.push(cell);
  return { cells: cells.reverse(), cost: best[end]! };
}

/** Pixels by cost, the cheapest on top. */
class Heap {
  private readonly cells: number[] = [];
  private readonly costs: number[] = [];

  push(cell: number, cost: number): void {
    const { cells, costs } = this;
    let at = cells.length;
    while (at > 0) {
      const above = (at - 1) >> 1;
      if (costs[above]! <= cost) break;
      cells[at] = cells[above]!;
      costs[at] = costs[above]!;
      at = above;
    }
    cells[at] = cell;
    costs[at] = cost;
  }

  /** -1 when it is empty. */
  pop(): number {
    const { cells, costs } = this;
    const [top = -1] = cells;
    const cell = cells.pop();
    const cost = costs.pop();
    if (cell === undefined || cost === undefined || cells.length === 0) return top;
    let at = 0;
    for (let below = 1; below < cells.length; below = 2 * at + 1) {
      if (below + 1 < cells.length && costs[below + 1]! < costs[below]!) below += 1;
      if (costs[below]! >= cost) break;
      cells[at] = cells[below]!;
      costs[at] = costs[below]!;
      at = below;
    }
    cells[at] = cell;
    costs[at] = cost;
    return top;
  }
}
