import type { Change, Diagnosis } from "@/lib/diagnose";

export interface Proposal {
  readonly first: Change;
  /** Each only if the one before does not cure it. */
  readonly next: readonly Change[];
}

/**
 * The one change to try, when the diagnosis names one: for a mark that has causes, for what the record or an answer says
 * is wrong, and for a set-up that points at one cause by itself. null also when an inspector comes first.
 */
export const proposal = ({ firstChange, nextChanges }: Diagnosis): Proposal | null =>
  firstChange === null ? null : { first: firstChange, next: nextChanges };
