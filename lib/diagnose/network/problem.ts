import type { Evidence, Network } from "./types";

/** A link to a present sign (numbered by its place among the present ones), made with probability q. */
export interface Spark {
  readonly sign: number;
  readonly q: number;
}

/** What the present signs need: by variable and state, the sparks; and the leak of each present sign. */
export interface Structure {
  readonly sparks: readonly (readonly (readonly Spark[])[])[];
  readonly leaks: readonly number[];
}

/** Only present signs couple the variables. */
export function structureOf(network: Network, present: readonly number[]): Structure {
  const distinct = [...new Set(present)];
  const sparks: Spark[][][] = network.variables.map(({ prior }) => prior.map(() => []));
  distinct.forEach((index, sign) => {
    for (const { variable, state, q } of network.signs[index]!.links) {
      if (q > 0) sparks[variable]![state]!.push({ sign, q });
    }
  });
  return { sparks, leaks: distinct.map((index) => network.signs[index]!.leak) };
}

export interface Weights {
  /** Per variable and state, scaled to sum 1; the scale is in `logScale`. */
  readonly rows: readonly (readonly number[])[];
  /** -Infinity when the evidence is impossible; the rows are then NaN. */
  readonly logScale: number;
}

/** Absent signs and virtual evidence only weigh the states of single variables, so they are multiplied in here. */
export function weightsOf(network: Network, evidence: Evidence): Weights {
  const raw = network.variables.map(({ prior }) => [...prior]);
  let logScale = 0;
  for (const index of new Set(evidence.absent)) {
    const { leak, links } = network.signs[index]!;
    logScale += Math.log1p(-leak);
    for (const { variable, state, q } of links) raw[variable]![state]! *= 1 - q;
  }
  for (const { variable, likelihood } of evidence.virtual) {
    raw[variable]!.forEach((_, state, row) => (row[state]! *= likelihood[state] ?? 0));
  }
  const rows = raw.map((row) => {
    const sum = row.reduce((a, b) => a + b, 0);
    logScale += Math.log(sum);
    return row.map((weight) => weight / sum);
  });
  return { rows, logScale };
}
