import type { z } from "zod";
import type { causeIds, DiagnoseInputSchema } from "@/lib/diagnose";

/** What is known of one bead, as the diagnosis takes it: SI units, and what is left out is not known. */
export type GivenCase = z.input<typeof DiagnoseInputSchema>;
export type GivenSetup = NonNullable<GivenCase["setup"]>;

export type CauseId = (typeof causeIds)[number];

/** Whence the expectations come: what the trade holds, without one document to name. */
export const COMMON_PRACTICE = "common practice, no source";

export interface ExpectedChange {
  /** Causes whose cure a practitioner would accept as the one change to try first. */
  readonly causes: readonly CauseId[];
  /** Sensible span of the new value when the first of `causes` is proposed, in the unit of the field changed. */
  readonly lo?: number;
  readonly hi?: number;
  /** The wanted word, where the first of `causes` is cured by a choice and not by a number. */
  readonly toText?: string;
}

/** What is left out of an expectation is not judged. */
export interface Expectation {
  /** Causes accepted in the first place, the likeliest first; null where the first place is not judged. */
  readonly top: readonly CauseId[] | null;
  /** null: too little is known, no change may be proposed. */
  readonly change?: ExpectedChange | null;
  /** Causes whose cure would be dangerous or plainly wrong as the one change. */
  readonly avoid?: readonly CauseId[];
  /** Codes of contradictions that must be raised. */
  readonly flags?: readonly string[];
  /** Words that must stand in the code of some caution given; "a|b" is either of them. */
  readonly cautions?: readonly string[];
  /** A qualified inspector looks at it before anything is changed or repaired. */
  readonly inspector?: true;
  /** No advice at all: nothing stands out. */
  readonly quiet?: true;
}

/** One bead of the trade and what an experienced welder would say of it. */
export interface Scenario {
  readonly id: string;
  readonly title: string;
  readonly basis: typeof COMMON_PRACTICE;
  readonly given: GivenCase;
  readonly expect: Expectation;
}

/** Rows that all rest on common practice. */
export function byCommonPractice(rows: readonly Omit<Scenario, "basis">[]): readonly Scenario[] {
  return rows.map((row) => ({ ...row, basis: COMMON_PRACTICE }));
}
