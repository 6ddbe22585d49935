import type { Point } from "@/lib/geometry";
import type { Ladder } from "./ladder";
import { brightness, type Plane } from "./plane";
import type { StraightEdge } from "./straight-edges";
import type { TickLength } from "./tick-pattern";

/** One side of one straight edge, looked at for lines. */
export interface Side {
  readonly edge: StraightEdge;
  /** Unit vector into the rule. */
  readonly inward: Point<"frame">;
  /** Begin of the profile along the edge. */
  readonly from: number;
}

/** Lines are followed this far into the rule, in pitches. */
const DEEPEST = 14;

/** Which way the lines run into the rule: how far along the edge with each pixel of depth, in the middle and from there to an end. */
interface Lean {
  readonly lean: number;
  readonly turn: number;
}

/** Contrast of the k-th line at a depth, with what lies half a pitch beside it; `off` pitches along the edge. */
type Contrast = (k: number, depth: number, lean: Lean, off?: number) => number;

export interface TicksSeen {
  readonly lengths: readonly TickLength[];
  /** How much smaller the rule is seen a pixel farther in, because its lines run together: a share. */
  readonly fallPerPx: number;
}

/** How far into the rule each line reaches, in pitches, along the direction in which the lines lie in the picture. */
export function ticksSeen(plane: Plane, side: Side, ladder: Ladder): TicksSeen {
  const ks = ladder.kept.map(({ k }) => k);
  const [first, last] = [ks[0]!, ks[ks.length - 1]!];
  const pitch = (ladder.at(last) - ladder.at(first)) / (last - first);
  const share = (k: number): number => (2 * k - first - last) / (last - first);
  const contrast: Contrast = (k, depth, { lean, turn }, off = 0) => {
    const { through, direction } = side.edge;
    const at = side.from + ladder.at(k) + (lean + turn * share(k)) * depth + off * pitch;
    const light = (beside: number): number =>
      brightness(
        plane,
        through.x + direction.x * (at + beside) + side.inward.x * depth,
        through.y + direction.y * (at + beside) + side.inward.y * depth,
      );
    return (light(-0.42 * pitch) + light(0.42 * pitch)) / 2 - light(0);
  };
  const { best, sign } = bestLean(contrast, ks, pitch);
  const depths = Array.from({ length: Math.round(DEEPEST * pitch) }, (_, i) => i + 1);
  const lengths = ks.map((k) => {
    const plain = depths.map((depth) =>
      Math.max(...[-0.1, 0, 0.1].map((off) => sign * contrast(k, depth, best, off))),
    );
    return { k, length: reach(plain, Math.ceil(1.5 * pitch)) / pitch };
  });
  // Lines that lean by `turn` more at either end meet half the length over `turn` away.
  return { lengths, fallPerPx: (2 * best.turn) / (ladder.at(last) - ladder.at(first)) };
}

/** The direction along which the lines stand out most, by a grid and then a finer one. */
function bestLean(contrast: Contrast, ks: readonly number[], pitch: number): { best: Lean; sign: number } {
  const some = ks.filter((_, i) => i % Math.max(1, Math.floor(ks.length / 24)) === 0);
  const depths = Array.from({ length: 6 }, (_, i) => (0.4 + 0.4 * i) * pitch);
  const sumOf = (lean: Lean): number =>
    some.reduce((sum, k) => sum + depths.reduce((all, depth) => all + contrast(k, depth, lean), 0), 0);
  let best: Lean & { sum: number } = { lean: 0, turn: 0, sum: 0 };
  const search = (from: Lean, step: number, leans: number, turns: number): void => {
    for (let i = -leans; i <= leans; i++)
      for (let j = -turns; j <= turns; j++) {
        const lean = { lean: from.lean + i * step, turn: from.turn + j * step };
        const sum = sumOf(lean);
        if (Math.abs(sum) > Math.abs(best.sum)) best = { ...lean, sum };
      }
  };
  search(best, 0.08, 7, 3);
  search(best, 0.03, 2, 2);
  return { best, sign: Math.sign(best.sum) };
}

/** From where a line becomes plain to where it is no more half as plain as it was at its plainest near the edge, twice over. */
function reach(contrasts: readonly number[], near: number): number {
  const usual = 0.5 * contrasts.slice(0, near).reduce((most, one) => Math.max(most, one), 0);
  const begin = contrasts.findIndex((one) => one >= usual);
  if (!(usual > 0)) return 0;
  for (let i = begin, low = 0; i < contrasts.length; i++) {
    low = contrasts[i]! < usual ? low + 1 : 0;
    if (low >= 2) return i - 1;
  }
  return contrasts.length;
}
