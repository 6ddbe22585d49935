import { invariant } from "@/lib/base";
import type { BeadObservation } from "./observation";
import { shareOf, type Share } from "./share";

/** One thing found on one bead. */
export interface Tally {
  readonly key: string;
  readonly beadId: string;
}

export interface ParetoRow {
  /** null: the row that gathers the rest. */
  readonly key: string | null;
  /** What a gathered row is made of, largest first; one key otherwise. */
  readonly keys: readonly string[];
  readonly count: number;
  /** Of all tallies. The interval takes tallies as independent, which several on one bead are not quite. */
  readonly share: Share;
  /** This row and all before it, of all tallies. */
  readonly cumulative: Share;
  /** Beads it was found on, each once, in order of appearance. */
  readonly beadIds: readonly string[];
}

export interface Pareto {
  readonly total: number;
  readonly rows: readonly ParetoRow[];
}

/** Keep this many rows and gather what follows, if that is more than one row. Infinity: gather nothing. */
export interface ParetoOptions {
  readonly most: number;
}

/**
 * Counts sorted from largest to smallest with their cumulative share. Equal counts keep the order in which they first
 * appeared, so that the same record always draws the same chart. The gathered rest stands last, whatever its size.
 */
export function pareto(tallies: readonly Tally[], { most }: ParetoOptions = { most: Infinity }): Pareto {
  invariant(most >= 0, `pareto keeps ${most} rows`);
  const byKey = new Map<string, Tally[]>();
  for (const tally of tallies) byKey.set(tally.key, [...(byKey.get(tally.key) ?? []), tally]);
  // Array.prototype.sort is stable (ECMA-262, since 2019), a Map keeps the order of insertion.
  const sorted = [...byKey].sort(([, a], [, b]) => b.length - a.length);
  const gather = sorted.length > most + 1;
  const heads = gather ? sorted.slice(0, most) : sorted;
  const rest = gather ? sorted.slice(most) : [];
  const parts = heads.map(([key, found]) => ({ key: key as string | null, keys: [key], found }));
  if (gather)
    parts.push({ key: null, keys: rest.map(([key]) => key), found: rest.flatMap(([, found]) => found) });
  let before = 0;
  const rows = parts.map(({ key, keys, found }) => {
    before += found.length;
    return {
      key,
      keys,
      count: found.length,
      share: shareOf(found.length, tallies.length),
      cumulative: shareOf(before, tallies.length),
      beadIds: [...new Set(found.map(({ beadId }) => beadId))],
    };
  });
  return { total: tallies.length, rows };
}

/** Each imperfection once per bead: a bead with nine pores is one bead with porosity. @twice */
export function imperfectionTallies(observations: readonly BeadObservation[]): readonly Tally[] {
  return observations.flatMap(({ beadId, imperfections }) =>
    [...new Set(imperfections)].map((key) => ({ key, beadId })),
  );
}

/** Beads whose cause a next bead confirmed. @twice */
export function causeTallies(observations: readonly BeadObservation[]): readonly Tally[] {
  return observations.flatMap(({ beadId, confirmedCause }) =>
    confirmedCause === null ? [] : [{ key: confirmedCause, beadId }],
  );
}
