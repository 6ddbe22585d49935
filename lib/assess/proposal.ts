import type { Change, Diagnosis } from "@/lib/diagnose";

/** A cause nobody marked anything for must be this likely, from the set-up alone, before a change is proposed. */
const FROM_SETUP_ALONE = 0.4;

export interface Proposal {
  readonly first: Change;
  /** Each only if the one before does not cure it. */
  readonly next: readonly Change[];
}

/**
 * The one change to try, when there is something to cure: a mark that has causes, a record that contradicts itself, or a
 * set-up that points at one cause by itself. A bead with nothing wrong on it, or with nothing but the marks of tools,
 * gets no advice. null also when an inspector comes first.
 */
export function proposal(diagnosis: Diagnosis): Proposal | null {
  const { firstChange, nextChanges, contradictions, causes, explainable } = diagnosis;
  if (firstChange === null) return null;
  const setupSpeaks = contradictions.length > 0 || (causes[0]?.probability ?? 0) >= FROM_SETUP_ALONE;
  return explainable.length > 0 || setupSpeaks ? { first: firstChange, next: nextChanges } : null;
}
