import { needsCheck, type Source } from "@/lib/base";
import { limitsOn, type LimitClause, type LimitsOfSet } from "@/lib/accept";
import type { ImperfectionId } from "@/lib/trade";
import { reachWords, testWords, whenWords } from "./limit-words";

/** One clause of a code in words. */
export interface LimitRow {
  readonly id: string;
  readonly clause: string;
  readonly title: string;
  readonly reach: string;
  /** In the order in which they apply; `when` empty: always, or in every other case. */
  readonly lines: readonly {
    readonly when: string;
    readonly says: readonly string[];
    readonly source: Source;
  }[];
  /** Some of its figures were not read in this edition: they stand to be checked in a licensed copy. */
  readonly checkYourCopy: boolean;
}

export interface LimitTable {
  readonly id: string;
  readonly title: string;
  readonly document: string;
  readonly edition: string;
  readonly weldKinds: LimitsOfSet["weldKinds"];
  readonly rows: readonly LimitRow[];
}

/** What the carried codes say of an imperfection, in words, and which say nothing of it by name. */
export function limitTables(id: ImperfectionId): {
  readonly limited: readonly LimitTable[];
  readonly silent: readonly LimitTable[];
} {
  const tables = limitsOn(id).map(({ clauses, settings, ...set }): LimitTable => ({
    ...set,
    rows: clauses.map((clause) => rowOf(clause, settings)),
  }));
  return {
    limited: tables.filter(({ rows }) => rows.length > 0),
    silent: tables.filter(({ rows }) => rows.length === 0),
  };
}

function rowOf(clause: LimitClause, settings: LimitsOfSet["settings"]): LimitRow {
  const { id, title, variants } = clause;
  return {
    id,
    clause: clause.clause,
    title,
    reach: reachWords(clause),
    lines: variants.map(({ when, tests, source }, i) => ({
      when: whenWords(when, settings) || (i > 0 ? "in every other case" : ""),
      says: tests.map(testWords),
      source,
    })),
    checkYourCopy: variants.some(({ source }) => needsCheck(source)),
  };
}
