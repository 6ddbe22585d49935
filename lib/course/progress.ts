import type { ImperfectionId } from "@/lib/trade";

/** A student's bead, reduced to what is compared. */
export interface ProgressBead {
  readonly beadId: string;
  /** What it was run for; beads of one exercise are compared with each other. null: for none. */
  readonly exerciseId: string | null;
  readonly imperfections: readonly ImperfectionId[];
  /** Looked for and not found, so that "gone" is told from "nobody looked". */
  readonly lookedFor: readonly ImperfectionId[];
  readonly verdict: "accept" | "reject" | "cannot-say" | null;
}

export interface ProgressStep {
  readonly beadId: string;
  /** The bead it is compared with: the one before it for the same exercise; null for a first. */
  readonly before: string | null;
  /** On the one before, looked for here and not found. */
  readonly gone: readonly ImperfectionId[];
  /** On the one before, neither marked here nor looked for: nobody can say. */
  readonly notLooked: readonly ImperfectionId[];
  readonly stayed: readonly ImperfectionId[];
  /** Here, not on the one before. */
  readonly fresh: readonly ImperfectionId[];
  readonly verdict: "better" | "worse" | "same" | null;
}

const ranks = { reject: 0, "cannot-say": 1, accept: 2 } as const;

function verdictStep(before: ProgressBead, now: ProgressBead): ProgressStep["verdict"] {
  if (before.verdict === null || now.verdict === null) return null;
  // "Cannot say" against a yes or a no is a matter of readings, not of welding.
  if (before.verdict === now.verdict) return "same";
  if (before.verdict === "cannot-say" || now.verdict === "cannot-say") return null;
  return ranks[now.verdict] > ranks[before.verdict] ? "better" : "worse";
}

function compare(before: ProgressBead, now: ProgressBead): ProgressStep {
  const was = [...new Set(before.imperfections)];
  const is = [...new Set(now.imperfections)];
  const missing = was.filter((id) => !is.includes(id));
  return {
    beadId: now.beadId,
    before: before.beadId,
    gone: missing.filter((id) => now.lookedFor.includes(id)),
    notLooked: missing.filter((id) => !now.lookedFor.includes(id)),
    stayed: was.filter((id) => is.includes(id)),
    fresh: is.filter((id) => !was.includes(id)),
    verdict: verdictStep(before, now),
  };
}

/** A student's beads, oldest first, each compared with the one before it for the same exercise. */
export function progress(beads: readonly ProgressBead[]): readonly ProgressStep[] {
  const last = new Map<string | null, ProgressBead>();
  return beads.map((bead) => {
    const before = last.get(bead.exerciseId);
    last.set(bead.exerciseId, bead);
    if (before) return compare(before, bead);
    return {
      beadId: bead.beadId,
      before: null,
      gone: [],
      notLooked: [],
      stayed: [],
      fresh: [],
      verdict: null,
    };
  });
}
