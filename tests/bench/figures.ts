/** A figure may be met only as it was measured: shown it is rounded against us. */
export type Goal =
  /** Ours over its baseline. */
  | { readonly kind: "ratio"; readonly most: number }
  /** What ours is beyond its baseline, in its own unit. */
  | { readonly kind: "beyond"; readonly most: number }
  | { readonly kind: "most"; readonly most: number }
  | { readonly kind: "least"; readonly least: number };

export interface Figure {
  readonly work: string;
  /** NaN: it could not be measured, which is not met. */
  readonly ours: number;
  readonly unit: "ms" | "kB" | "points";
  /** What comes once it stands, in the same unit, and is no part of `ours`; left out where there is no such thing. */
  readonly later?: number;
  /** Measured in the same run, in turn; null where the goal is a plain number. */
  readonly baseline: { readonly name: string; readonly value: number } | null;
  readonly goal: Goal | null;
  /** How far it scattered, or why it is missing. */
  readonly note?: string;
}

/** Whether the goal is met; null where none was set. A figure that is no number meets nothing. */
export function isMet({ ours, baseline, goal }: Figure): boolean | null {
  if (goal === null) return null;
  const against = baseline?.value ?? NaN;
  switch (goal.kind) {
    case "ratio":
      return ours / against <= goal.most;
    case "beyond":
      return ours - against <= goal.most;
    case "most":
      return ours <= goal.most;
    case "least":
      return ours >= goal.least;
  }
}

/** Rounded away from the goal: upwards where little is wanted, downwards where much is. */
export function roundedAgainst(value: number, digits: number, wanted: "little" | "much"): string {
  if (!Number.isFinite(value)) return "none";
  const by = 10 ** digits;
  // What binary fractions add to a decimal one is no tenth of anything.
  const scaled = Number((value * by).toPrecision(12));
  return ((wanted === "little" ? Math.ceil(scaled) : Math.floor(scaled)) / by).toFixed(digits);
}

/** Share of sorted values below it: 0.5 the median, 0.95 the p95; NaN of none. The one nearest above, never between two. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN;
}

export const median = (values: readonly number[]): number => quantile(values, 0.5);

const heads = ["work", "ours", "baseline", "", "ratio", "goal", "", "afterwards", ""] as const;

/** The one table: a line each, columns as wide as they must be. */
export function table(figures: readonly Figure[]): string {
  const rows = [heads, ...figures.map(cells)];
  const widths = heads.map((_, i) => Math.max(...rows.map((row) => row[i]!.length)));
  const isText = (i: number): boolean => i === 0 || i === 3 || i === 5 || i === 6 || i === 8;
  return rows
    .map((row) =>
      row
        .map((cell, i) => (isText(i) ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!)))
        .join("  ")
        .trimEnd(),
    )
    .join("\n");
}

function cells(figure: Figure): readonly string[] {
  const { work, ours, unit, baseline, goal, later, note = "" } = figure;
  const wanted = goal?.kind === "least" ? "much" : "little";
  const shown = (value: number, way: "little" | "much"): string =>
    Number.isFinite(value) ? `${roundedAgainst(value, value < 10 ? 1 : 0, way)} ${unit}` : "not measured";
  const met = isMet(figure);
  return [
    work,
    shown(ours, wanted),
    // A baseline is rounded the other way: a larger one would flatter.
    baseline ? shown(baseline.value, wanted === "little" ? "much" : "little") : "",
    baseline?.name ?? "",
    baseline ? roundedAgainst(ours / baseline.value, 2, wanted) : "",
    goal ? goalWords(goal, unit) : "",
    met === null ? "" : met ? "met" : "NOT met",
    later === undefined ? "" : shown(later, "little"),
    note,
  ];
}

function goalWords(goal: Goal, unit: Figure["unit"]): string {
  switch (goal.kind) {
    case "ratio":
      return `at most ${goal.most} times`;
    case "beyond":
      return `at most ${goal.most} ${unit} more`;
    case "most":
      return `at most ${goal.most} ${unit}`;
    case "least":
      return `at least ${goal.least}`;
  }
}
