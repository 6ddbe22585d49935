import type { PlanePoint } from "@/lib/measure";
import type { Arc } from "./ring";
import type { SectionFigureId } from "./types";

/** Values at picks, each by the pick's place in the outline. */
export type Valued = readonly { readonly index: number; readonly value: number }[];

/** The picks whose greatest or least value a figure is. `sign` 1: the figure is the least of them; -1: the greatest. */
export type Extremes = Partial<Record<SectionFigureId, { readonly sign: 1 | -1; readonly at: Valued }>>;

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

export const valuesAt = (indices: readonly number[], of: (index: number) => number): Valued =>
  indices.map((index) => ({ index, value: of(index) }));
export const opposite = (list: Valued): Valued => list.map(({ index, value }) => ({ index, value: -value }));

export function joinShapes(...shapes: readonly (SectionShape | null)[]): SectionShape {
  return {
    numbers: Object.assign({}, ...shapes.map((shape) => shape?.numbers)) as SectionShape["numbers"],
    extremes: Object.assign({}, ...shapes.map((shape) => shape?.extremes)) as Extremes,
  };
}

/** How deep one side was melted. NaN where no part of the boundary lies in the range. */
export interface Depths {
  readonly greatest: number;
  readonly least: number;
  readonly at: Valued;
}

/**
 * Depths of a boundary of fusion below an edge, between two places along it.
 *
 * @param below Along the edge, and how far inside the plate.
 */
export function depthsOf(
  arc: Arc,
  ring: readonly PlanePoint[],
  curve: readonly PlanePoint[],
  [low, high]: readonly [number, number],
  below: (point: PlanePoint) => { readonly s: number; readonly d: number },
): Depths {
  const depths = depthsBetween(curve.map(below), low, high);
  return {
    greatest: greatest(depths),
    least: least(depths),
    at: arc.indices
      .map((index) => ({ index, ...below(ring[index]!) }))
      .filter(({ s }) => s >= low && s <= high)
      .map(({ index, d }) => ({ index, value: d })),
  };
}

export function fusionShape(one: Depths, two: Depths): SectionShape {
  return {
    numbers: {
      "fusion-1-greatest": one.greatest,
      "fusion-1-least": one.least,
      "fusion-2-greatest": two.greatest,
      "fusion-2-least": two.least,
    },
    extremes: {
      "fusion-1-greatest": { sign: -1, at: one.at },
      "fusion-1-least": { sign: 1, at: one.at },
      "fusion-2-greatest": { sign: -1, at: two.at },
      "fusion-2-least": { sign: 1, at: two.at },
    },
  };
}
