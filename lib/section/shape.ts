import type { SectionFigureId } from "./types";

/**
 * The picks whose greatest or least value a figure is, each by its place in the outline. `sign` 1: the figure is the least
 * of them; -1: the greatest.
 */
export type Extremes = Partial<
  Record<
    SectionFigureId,
    { readonly sign: 1 | -1; readonly at: readonly { readonly index: number; readonly value: number }[] }
  >
>;

/** Every figure of a section in the unit of its points; NaN where the shape gives none. */
export interface SectionShape {
  readonly numbers: Partial<Record<SectionFigureId, number>>;
  readonly extremes: Extremes;
}

/** The outer tenth at each end of a side says nothing of its fusion: at a toe it is nought by its meaning. Own choice. */
export const END_SHARE = 0.1;

export const greatest = (list: readonly number[]): number => (list.length === 0 ? NaN : Math.max(...list));
export const least = (list: readonly number[]): number => (list.length === 0 ? NaN : Math.min(...list));

/** A path given along an edge (`s`) and its depth (`d`), between two places along it, cut there exactly. */
export function depthsBetween(
  path: readonly { readonly s: number; readonly d: number }[],
  low: number,
  high: number,
): readonly number[] {
  return path.flatMap(({ s, d }, i) => {
    const next = path[i + 1];
    const kept = s >= low && s <= high ? [d] : [];
    if (next === undefined) return kept;
    const cuts = [low, high].filter((at) => (s - at) * (next.s - at) < 0);
    return [...kept, ...cuts.map((at) => d + ((at - s) / (next.s - s)) * (next.d - d))];
  });
}
