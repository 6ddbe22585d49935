import { studentQuantile } from "@/lib/numeric";
import { loss } from "./expected-improvement";
import { groupsOf, pureError } from "./scatter";
import type { Aim, Observation, Trial } from "./trial";

/** How often a best is named although nothing but scatter is there. */
export const FALSE_NAMES = 0.05;

export interface Standing {
  /** The setting that came out best so far, whether or not it may be called so. */
  readonly leader: readonly number[];
  readonly loss: number;
  /** Settings that are worse beyond the scatter; empty: nothing stands out, and no best is named. */
  readonly apart: readonly (readonly number[])[];
  /** Settings that the scatter does not tell from the leader, the leader left out. */
  readonly together: readonly (readonly number[])[];
  /** Whether a best may be named. */
  readonly named: boolean;
}

/**
 * Where the settings that were run stand to one another. Two are told apart where they differ by more than scatter makes
 * any pair of them differ in one of twenty series, however often somebody looks on the way to the last bead: each bead makes
 * one new mean, so that a series of n beads compares at most n(n-1)/2 pairs of means, and the share is divided by these
 * (Bonferroni). The scatter is the stated noise, or that of the repeats where it asks for more. For a target the losses
 * are folded, which only brings them nearer. null: nothing was read yet.
 */
export function standing(
  aim: Pick<Aim, "want" | "target">,
  seen: readonly Observation[],
  { noise, budget }: Pick<Trial, "noise" | "budget">,
): Standing | null {
  const groups = groupsOf(seen).map((group) => ({ ...group, loss: loss(aim, group.mean) }));
  if (groups.length === 0) return null;
  const leader = groups.reduce((a, b) => (b.loss < a.loss ? b : a));
  const others = groups.filter((group) => group !== leader);
  const beads = Math.max(2, budget, seen.length);
  const share = 1 - FALSE_NAMES / (beads * (beads - 1));
  const error = pureError(seen);
  const half = Math.max(
    noise * studentQuantile(share, Infinity),
    error.degrees > 0 ? Math.sqrt(error.sum / error.degrees) * studentQuantile(share, error.degrees) : 0,
  );
  const isApart = (group: (typeof groups)[number]): boolean =>
    group.loss - leader.loss > half * Math.sqrt(1 / group.values.length + 1 / leader.values.length);
  const apart = others.filter(isApart);
  return {
    leader: leader.at,
    loss: leader.loss,
    apart: apart.map(({ at }) => at),
    together: others.filter((group) => !isApart(group)).map(({ at }) => at),
    named: apart.length > 0,
  };
}
