import type { ImperfectionId } from "@/lib/trade";

/** What makes two beads alike enough to be compared; null where nobody said. */
export interface BeadLikeness {
  readonly joint: string | null;
  readonly position: string | null;
  readonly electrodeClass: string | null;
}

/** A student's bead, reduced to what is compared. */
export interface ProgressBead {
  readonly beadId: string;
  /** What it was run for; null: for no exercise. */
  readonly exerciseId: string | null;
  readonly likeness: BeadLikeness;
  readonly imperfections: readonly ImperfectionId[];
  /** Looked for and not found, so that "gone" is told from "nobody looked". */
  readonly lookedFor: readonly ImperfectionId[];
  readonly verdict: "accept" | "reject" | "cannot-say" | null;
  /** Share of the rubric in returned feedback, 0 to 1; null: none, or a line is open. */
  readonly score: number | null;
}

export interface ProgressStep {
  readonly beadId: string;
  /** Which try of its exercise it is, from 1; null where it was run for none. */
  readonly attempt: number | null;
  /** The last bead before it of the same joint, position and wire; null where there is none. */
  readonly before: string | null;
  /** On the one before, looked for here and not found. */
  readonly gone: readonly ImperfectionId[];
  /** On the one before, neither marked here nor looked for: nobody can say. */
  readonly notLooked: readonly ImperfectionId[];
  readonly stayed: readonly ImperfectionId[];
  /** Here, not on the one before. */
  readonly fresh: readonly ImperfectionId[];
  readonly verdict: "better" | "worse" | "same" | null;
  /** Score here less score before, in parts of one; null where either is missing or the exercises differ. */
  readonly scoreChange: number | null;
}

const ranks = { reject: 0, "cannot-say": 1, accept: 2 } as const;

function verdictStep(before: ProgressBead, now: ProgressBead): ProgressStep["verdict"] {
  if (before.verdict === null || now.verdict === null) return null;
  // "Cannot say" against a yes or a no is a matter of readings, not of welding.
  if (before.verdict === now.verdict) return "same";
  if (before.verdict === "cannot-say" || now.verdict === "cannot-say") return null;
  return ranks[now.verdict] > ranks[before.verdict] ? "better" : "worse";
}

/** Scores by two rubrics are no two points on one scale. */
function scoreChange(before: ProgressBead, now: ProgressBead): number | null {
  if (before.exerciseId === null || before.exerciseId !== now.exerciseId) return null;
  return before.score === null || now.score === null ? null : now.score - before.score;
}

function compare(before: ProgressBead, now: ProgressBead, attempt: number | null): ProgressStep {
  const was = [...new Set(before.imperfections)];
  const is = [...new Set(now.imperfections)];
  const missing = was.filter((id) => !is.includes(id));
  return {
    beadId: now.beadId,
    attempt,
    before: before.beadId,
    gone: missing.filter((id) => now.lookedFor.includes(id)),
    notLooked: missing.filter((id) => !now.lookedFor.includes(id)),
    stayed: was.filter((id) => is.includes(id)),
    fresh: is.filter((id) => !was.includes(id)),
    verdict: verdictStep(before, now),
    scoreChange: scoreChange(before, now),
  };
}

const first = (beadId: string, attempt: number | null): ProgressStep => ({
  beadId,
  attempt,
  before: null,
  gone: [],
  notLooked: [],
  stayed: [],
  fresh: [],
  verdict: null,
  scoreChange: null,
});

/** One key for all beads that are alike; null where joint, position or wire is not known: it is like no other. */
function likenessKey({ likeness: { joint, position, electrodeClass } }: ProgressBead): string | null {
  const parts = [joint, position, electrodeClass];
  return parts.includes(null) ? null : JSON.stringify(parts);
}

/**
 * A student's beads, oldest first, each compared with the last one of the same joint, position and wire: a stringer says
 * nothing of a T-joint. Tries are counted within an exercise.
 */
export function progress(beads: readonly ProgressBead[]): readonly ProgressStep[] {
  const last = new Map<string, ProgressBead>();
  const tries = new Map<string, number>();
  return beads.map((bead) => {
    const { exerciseId } = bead;
    const attempt = exerciseId === null ? null : (tries.get(exerciseId) ?? 0) + 1;
    if (exerciseId !== null && attempt !== null) tries.set(exerciseId, attempt);
    const key = likenessKey(bead);
    const before = key === null ? undefined : last.get(key);
    if (key !== null) last.set(key, bead);
    return before ? compare(before, bead, attempt) : first(bead.beadId, attempt);
  });
}
