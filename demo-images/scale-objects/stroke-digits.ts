import type { PlanPoint } from "../imperfections/draft";

/** Digits as strokes in a box one unit wide and two high, origin bottom left. Our own drawing. */
const strokes: Readonly<Record<string, readonly PlanPoint[]>> = {
  "0": [
    [0.5, 2],
    [0.12, 1.7],
    [0, 1],
    [0.12, 0.3],
    [0.5, 0],
    [0.88, 0.3],
    [1, 1],
    [0.88, 1.7],
    [0.5, 2],
  ],
  "1": [
    [0.15, 1.55],
    [0.55, 2],
    [0.55, 0],
  ],
  "2": [
    [0.05, 1.55],
    [0.25, 1.92],
    [0.6, 2],
    [0.92, 1.75],
    [0.9, 1.35],
    [0, 0],
    [1, 0],
  ],
  "3": [
    [0.05, 1.75],
    [0.4, 2],
    [0.85, 1.8],
    [0.85, 1.3],
    [0.4, 1.08],
    [0.9, 0.85],
    [0.95, 0.35],
    [0.5, 0],
    [0, 0.25],
  ],
  "4": [
    [0.75, 0],
    [0.75, 2],
    [0, 0.6],
    [1, 0.6],
  ],
  "5": [
    [0.9, 2],
    [0.15, 2],
    [0.08, 1.15],
    [0.5, 1.28],
    [0.92, 1],
    [0.95, 0.45],
    [0.55, 0],
    [0, 0.2],
  ],
  "6": [
    [0.85, 1.85],
    [0.45, 2],
    [0.1, 1.4],
    [0, 0.6],
    [0.3, 0.05],
    [0.75, 0.05],
    [1, 0.55],
    [0.75, 1.1],
    [0.3, 1.1],
    [0.02, 0.7],
  ],
  "7": [
    [0, 2],
    [1, 2],
    [0.35, 0],
  ],
  "8": [
    [0.5, 1.08],
    [0.1, 1.4],
    [0.15, 1.85],
    [0.5, 2],
    [0.85, 1.85],
    [0.9, 1.4],
    [0.5, 1.08],
    [0.05, 0.7],
    [0.1, 0.15],
    [0.5, 0],
    [0.9, 0.15],
    [0.95, 0.7],
    [0.5, 1.08],
  ],
  "9": [
    [0.15, 0.15],
    [0.55, 0],
    [0.9, 0.6],
    [1, 1.4],
    [0.7, 1.95],
    [0.25, 1.95],
    [0, 1.45],
    [0.25, 0.9],
    [0.7, 0.9],
    [0.98, 1.3],
  ],
};

const ADVANCE = 1.45;

/** Width of a number in units of its letter width. */
export const numberWidth = (text: string): number => text.length * ADVANCE - (ADVANCE - 1);

/** Distance from (x, y) to the nearest stroke of `text`, in letter widths; its box starts at the origin. */
export function distanceToNumber(text: string, x: number, y: number): number {
  let nearest = Infinity;
  for (let n = 0; n < text.length; n++) {
    const left = n * ADVANCE;
    if (x < left - 0.4 || x > left + 1.4) continue;
    const path = strokes[text[n] as string] ?? [];
    for (let i = 0; i + 1 < path.length; i++) {
      const [ax, ay] = path[i]!;
      const [bx, by] = path[i + 1]!;
      const dx = bx - ax;
      const dy = by - ay;
      const t = Math.min(1, Math.max(0, ((x - left - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
      nearest = Math.min(nearest, Math.hypot(x - left - ax - t * dx, y - ay - t * dy));
    }
  }
  return nearest;
}
