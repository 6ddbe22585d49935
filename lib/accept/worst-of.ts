import type { Outcome } from "./outcome";

const severity = { fails: 0, open: 1, meets: 2, "not-applicable": 3 } as const;

/** Worst first by result, then by margin; an open one without a value stands before one with. */
export function bySeverity(a: Outcome, b: Outcome): number {
  return severity[a.result] - severity[b.result] || (a.margin ?? -Infinity) - (b.margin ?? -Infinity);
}

/** One outcome for several single ones: the worst, with everything read and everything missing. */
export function worstOf(list: readonly Outcome[]): Outcome {
  const worst = [...list].sort((a, b) => bySeverity(a, b) || (b.value ?? 0) - (a.value ?? 0))[0]!;
  return {
    ...worst,
    readingsUsed: [...new Set([...worst.readingsUsed, ...list.flatMap((one) => one.readingsUsed)])],
    figuresUsed: [...new Set(list.flatMap((one) => one.figuresUsed))],
    coarse: list.some((one) => one.coarse),
    missing: worst.result === "open" ? list.flatMap((one) => (one.result === "open" ? one.missing : [])) : [],
  };
}
