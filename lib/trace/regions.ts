import type { Point } from "@/lib/geometry";
import { SQUARE } from "./square";

/** Cells of the map that hang together and are taken for weld bead. */
export interface Region {
  readonly cells: readonly number[];
  /** Mean share that the finder gives them. */
  readonly share: number;
}

const share = (logit: number): number => 1 / (1 + Math.exp(-logit));

/** Regions of the finder's answer, the largest first; what is smaller than `leastCells` is left out. */
export function regionsOf(logits: Float32Array, leastCells: number): readonly Region[] {
  const { answer } = SQUARE;
  const seen = new Uint8Array(answer * answer);
  const regions: Region[] = [];
  for (let start = 0; start < logits.length; start++) {
    if (seen[start] || logits[start]! <= 0) continue;
    const cells = grownFrom(start, logits, seen);
    if (cells.length < leastCells) continue;
    regions.push({ cells, share: cells.reduce((sum, k) => sum + share(logits[k]!), 0) / cells.length });
  }
  return regions.sort((a, b) => b.cells.length - a.cells.length);
}

function grownFrom(start: number, logits: Float32Array, seen: Uint8Array): readonly number[] {
  const { answer } = SQUARE;
  const cells = [start];
  seen[start] = 1;
  for (let n = 0; n < cells.length; n++) {
    const k = cells[n]!;
    const [x, y] = [k % answer, Math.floor(k / answer)];
    for (const [i, j] of [
      [x - 1, y],
      [x + 1, y],
      [x, y - 1],
      [x, y + 1],
    ] as const) {
      const next = j * answer + i;
      if (i < 0 || j < 0 || i >= answer || j >= answer || seen[next] || logits[next]! <= 0) continue;
      seen[next] = 1;
      cells.push(next);
    }
  }
  return cells;
}

/** A region as a strip of even width along a middle, in cells. */
export interface RegionCourse {
  /** From one end to the other along the middle. */
  readonly middle: readonly Point<"frame">[];
  readonly length: number;
  readonly width: number;
}

/** Places along the middle. */
const PLACES = 9;

/** The middle of a longish region, by the means of slices square to its principal axis. */
export function courseOfRegion({ cells }: Region): RegionCourse {
  const { answer } = SQUARE;
  const points = cells.map((k) => ({ x: (k % answer) + 0.5, y: Math.floor(k / answer) + 0.5 }));
  const count = points.length;
  const [mx, my] = [mean(points.map(({ x }) => x)), mean(points.map(({ y }) => y))];
  let [xx, xy, yy] = [0, 0, 0];
  for (const { x, y } of points) {
    xx += (x - mx) ** 2;
    xy += (x - mx) * (y - my);
    yy += (y - my) ** 2;
  }
  const turn = 0.5 * Math.atan2(2 * xy, xx - yy);
  const [tx, ty] = [Math.cos(turn), Math.sin(turn)];
  const laid = points.map(({ x, y }) => ({
    u: (x - mx) * tx + (y - my) * ty,
    v: (y - my) * tx - (x - mx) * ty,
  }));
  const us = laid.map(({ u }) => u);
  const [first, last] = [least(us) - 0.5, most(us) + 0.5];
  const length = last - first;
  const slices = Array.from({ length: PLACES }, (_, i) => {
    const at = first + (length * i) / (PLACES - 1);
    const near = laid.filter(({ u }) => Math.abs(u - at) <= length / (PLACES - 1) / 2 + 0.5);
    return { u: at, v: mean(near.map(({ v }) => v)) };
  });
  const middle = slices.map(({ u, v }) => ({ x: mx + u * tx - v * ty, y: my + u * ty + v * tx }));
  return { middle, length, width: count / length };
}

const mean = (list: readonly number[]): number => list.reduce((sum, one) => sum + one, 0) / list.length;
const least = (list: readonly number[]): number => list.reduce((a, b) => Math.min(a, b), Infinity);
const most = (list: readonly number[]): number => list.reduce((a, b) => Math.max(a, b), -Infinity);
