import { fail, issue, type Issue } from "@/lib/base";

/** Everything a typed quantity can be refused for. Each has a sentence in `sentences.ts`. */
export const unitsIssueCodes = [
  "number-missing",
  "number-not-understood",
  "number-negative",
  "number-zero",
  "number-too-small",
  "number-too-large",
  "number-ambiguous",
  "number-grouped",
  "number-is-range",
  "divided-by-zero",
  "unit-unknown",
  "gauge-unknown",
  "clock-out-of-range",
] as const;
export type UnitsIssueCode = (typeof unitsIssueCodes)[number];
export type UnitsIssue = Issue<UnitsIssueCode>;

export interface ParseOptions {
  /** Where the field lies in the form; copied into the issue. */
  readonly path?: readonly (string | number)[];
  /** Bounds in the unit the function returns. `max` has a default that no welding machine reaches. */
  readonly min?: number;
  readonly max?: number;
  /** Whether 0 is an answer. Default: no, except for angles. */
  readonly allowZero?: boolean;
  /** What to do in place of a number below zero, as a sentence; default: type it without the minus sign. */
  readonly belowZero?: string;
}

/** Longer input is a paste accident; the bound also bounds the work of every pattern. */
export const MAX_TYPED_LENGTH = 60;

/** A refusal that quotes what was typed (shortened) and what could have been typed. */
export function refuse(
  code: UnitsIssueCode,
  typed: string,
  options: ParseOptions,
  data: Readonly<Record<string, string | number>>,
): { readonly ok: false; readonly issues: readonly UnitsIssue[] } {
  const text = typed.trim();
  const shown = text.length > 30 ? `${text.slice(0, 30)}…` : text;
  return fail(issue(code, options.path ?? [], { text: shown, ...data }));
}
