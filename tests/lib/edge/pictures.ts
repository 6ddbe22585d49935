import fc from "fast-check";
import type { GreyPatch } from "@/lib/edge";

/** Small patches of any grey, and two different pixels of each. */
export const anyPatch: fc.Arbitrary<{
  readonly patch: GreyPatch;
  readonly start: number;
  readonly end: number;
}> = fc.tuple(fc.integer({ min: 4, max: 14 }), fc.integer({ min: 4, max: 14 })).chain(([columns, rows]) =>
  fc
    .tuple(
      fc.uint8Array({ minLength: columns * rows, maxLength: columns * rows }),
      fc.integer({ min: 0, max: columns * rows - 1 }),
      fc.integer({ min: 1, max: columns * rows - 1 }),
    )
    .map(([grey, start, further]) => ({
      patch: { columns, rows, grey },
      start,
      end: (start + further) % (columns * rows),
    })),
);

/** Grey by a function of the middle of each pixel. */
export function painted(columns: number, rows: number, light: (x: number, y: number) => number): GreyPatch {
  const grey = Uint8Array.from({ length: columns * rows }, (_, k) =>
    Math.round(Math.min(255, Math.max(0, light((k % columns) + 0.5, Math.floor(k / columns) + 0.5)))),
  );
  return { columns, rows, grey };
}

/** The same numbers each time. Source: Park and Miller 1988, the minimal standard generator. */
export function chance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 16807) % 2147483647;
    return state / 2147483647;
  };
}

/** Pixels of the straight line between two, each the nearest to it. Source: Bresenham 1965. */
export function straightCells(columns: number, start: number, end: number): readonly number[] {
  const [x, y] = [start % columns, Math.floor(start / columns)];
  const [dx, dy] = [(end % columns) - x, Math.floor(end / columns) - y];
  const steps = Math.max(Math.abs(dx), Math.abs(dy));
  return Array.from(
    { length: steps + 1 },
    (_, i) => Math.round(y + (dy * i) / steps) * columns + Math.round(x + (dx * i) / steps),
  );
}
