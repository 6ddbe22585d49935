import type { RowLimit, Verdict, VerdictRow } from "./verdict";

export const rowDifferences = ["only-first", "only-second", "result", "limit"] as const;

/** One rule on which two verdicts differ. */
export interface RowDifference {
  /** Shared by the editions of one book; of two books that judge alike, see `sameRule`. */
  readonly rule: string;
  readonly title: string;
  /** In the order of `rowDifferences`; a row that only one has differs in nothing else. */
  readonly differs: readonly (typeof rowDifferences)[number][];
  readonly first: VerdictRow | null;
  readonly second: VerdictRow | null;
}

export interface VerdictComparison {
  readonly sameWord: boolean;
  readonly differences: readonly RowDifference[];
  /** How many rules both judge alike. */
  readonly alike: number;
}

/**
 * Where two verdicts on one weld differ, row by row: in the result, in the limit, or because only one has the row.
 * Editions of one book share their rule ids; levels of ISO 5817 share their item numbers; other sets have no rows in
 * common, and every row that applies stands alone. Rows that apply in neither are left out. Pure; no errors.
 */
export function compareVerdicts(first: Verdict, second: Verdict): VerdictComparison {
  const [ours, theirs] = [byRule(first), byRule(second)];
  const rules = [...new Set([...ours.keys(), ...theirs.keys()])];
  const pairs = rules.map((rule): RowDifference => {
    const [a, b] = [ours.get(rule) ?? null, theirs.get(rule) ?? null];
    return { rule, title: (a ?? b)!.title, differs: howTheyDiffer(a, b), first: a, second: b };
  });
  const applying = pairs.filter(({ first: a, second: b }) => applies(a) || applies(b));
  const differences = applying.filter(({ differs }) => differs.length > 0);
  return {
    sameWord: first.verdict === second.verdict,
    differences: differences.toSorted((a, b) => rank(a) - rank(b)),
    alike: applying.length - differences.length,
  };
}

/** What two rows have to share to be the same rule: the id, less the level of ISO 5817 in front of its item. */
export function sameRule(ruleId: string): string {
  if (ruleId.endsWith("-scope")) return "scope";
  return ruleId.replace(/^iso-(?:[bcd]|9606-1)-(?=\d)/, "iso-");
}

const byRule = (verdict: Verdict): ReadonlyMap<string, VerdictRow> =>
  new Map(verdict.rows.map((row) => [sameRule(row.ruleId), row]));

const applies = (row: VerdictRow | null): boolean => row !== null && row.result !== "not-applicable";

function howTheyDiffer(first: VerdictRow | null, second: VerdictRow | null): RowDifference["differs"] {
  if (first === null) return ["only-second"];
  if (second === null) return ["only-first"];
  return [
    ...(first.result === second.result ? [] : (["result"] as const)),
    ...(sameLimit(first.limit, second.limit) ? [] : (["limit"] as const)),
  ];
}

function sameLimit(first: RowLimit | null, second: RowLimit | null): boolean {
  if (first === null || second === null) return first === second;
  return (
    first.comparison === second.comparison &&
    first.unit === second.unit &&
    // Formulas of the same value in other words ("0.5", "min(0.1 t, 0.5)") set the same limit.
    Math.abs(first.value - second.value) <= 1e-9 * Math.max(1, Math.abs(first.value))
  );
}

const severity = { fails: 0, open: 1, meets: 2, "not-applicable": 3 } as const;

/** A result that differs matters more than a limit that does; within each the worst result stands first. */
function rank({ differs, first, second }: RowDifference): number {
  const kind = differs.includes("result") ? 0 : differs.includes("limit") ? 20 : 10;
  return (
    kind + Math.min(severity[first?.result ?? "not-applicable"], severity[second?.result ?? "not-applicable"])
  );
}
