import type { Observation } from "./trial";

/** The runs at one setting. */
export interface Group {
  readonly at: readonly number[];
  readonly values: readonly number[];
  readonly mean: number;
}

const near = (a: readonly number[], b: readonly number[]): boolean =>
  a.every((v, i) => Math.abs(v - b[i]!) <= 1e-9 * Math.max(1, Math.abs(v)));

/** Runs with the same settings together, in the order in which the settings were first run. */
export function groupsOf(seen: readonly Observation[]): readonly Group[] {
  const groups: { at: readonly number[]; values: number[] }[] = [];
  for (const { at, value } of seen) {
    const found = groups.find((group) => near(group.at, at));
    if (found) found.values.push(value);
    else groups.push({ at, values: [value] });
  }
  return groups.map((group) => ({
    ...group,
    mean: group.values.reduce((a, b) => a + b, 0) / group.values.length,
  }));
}

/** Scatter from runs that were repeated: sum of squares about each setting's own mean, and its degrees of freedom. */
export function pureError(seen: readonly Observation[]): { readonly sum: number; readonly degrees: number } {
  const groups = groupsOf(seen);
  return {
    sum: groups.reduce(
      (total, { values, mean }) => total + values.reduce((s, v) => s + (v - mean) ** 2, 0),
      0,
    ),
    degrees: seen.length - groups.length,
  };
}
