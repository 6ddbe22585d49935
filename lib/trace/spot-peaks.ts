import { TILE } from "./spot-tiles";
import type { TileAnswer } from "./types";

/** A place where the answer is highest, in the tile's pixels. */
export interface SpotPeak {
  readonly kind: "hole" | "spatter";
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  /** 0 to 1. */
  readonly sure: number;
}

const PLANE = TILE.answer * TILE.answer;
const CELL = TILE.side / TILE.answer;

/** Every local top of both maps that is at least so sure and lies in the tile's core. */
export function peaksOf(answer: TileAnswer, leastSure: number): readonly SpotPeak[] {
  const level = Math.log(leastSure / (1 - leastSure));
  const [from, to] = [TILE.edge / CELL, (TILE.side - TILE.edge) / CELL];
  const peaks: SpotPeak[] = [];
  for (const [plane, kind] of [[0, "hole"] as const, [1, "spatter"] as const])
    for (let j = from; j < to; j++)
      for (let i = from; i < to; i++) {
        const k = plane * PLANE + j * TILE.answer + i;
        const top = answer[k]!;
        if (top < level || !isTop(answer, k)) continue;
        peaks.push({
          kind,
          x: (i + 0.5 + between(answer[k - 1]!, top, answer[k + 1]!)) * CELL,
          y: (j + 0.5 + between(answer[k - TILE.answer]!, top, answer[k + TILE.answer]!)) * CELL,
          radius: Math.exp(answer[2 * PLANE + j * TILE.answer + i]!),
          sure: 1 / (1 + Math.exp(-top)),
        });
      }
  return peaks;
}

/** Higher than the cells before it in reading order, and no lower than those after it. */
function isTop(answer: TileAnswer, k: number): boolean {
  for (let j = -1; j <= 1; j++)
    for (let i = -1; i <= 1; i++) {
      const other = answer[k + j * TILE.answer + i]!;
      const isBefore = j < 0 || (j === 0 && i < 0);
      if (isBefore ? other >= answer[k]! : other > answer[k]!) return false;
    }
  return true;
}

/** Where the parabola through three neighbours is highest, cells off the middle one. */
function between(a: number, top: number, b: number): number {
  const bend = 2 * top - a - b;
  return bend < 1e-6 ? 0 : Math.max(-0.5, Math.min(0.5, (b - a) / (2 * bend)));
}

/** The surest of those that lie on one another. */
export function withoutDoubles<T extends Omit<SpotPeak, "kind">>(peaks: readonly T[]): readonly T[] {
  const kept: T[] = [];
  for (const one of peaks.toSorted((a, b) => b.sure - a.sure))
    if (!kept.some((k) => Math.hypot(k.x - one.x, k.y - one.y) < 0.7 * Math.max(k.radius, one.radius)))
      kept.push(one);
  return kept;
}
