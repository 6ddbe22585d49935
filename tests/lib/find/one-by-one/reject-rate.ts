import type { BeadObservation } from "@/lib/trends/observation";
import { shareOf, type Share, type ShareMethod } from "@/lib/trends/share";

/** Rejected beads among those with a decided verdict, and who they are. */
export interface RejectRate {
  readonly rejected: Share;
  /** Accepted or rejected: what the share is of. */
  readonly decidedIds: readonly string[];
  readonly rejectedIds: readonly string[];
  /** "cannot say" or no criteria chosen: neither good nor bad, left out of the share and named here. */
  readonly undecidedIds: readonly string[];
}

const idsOf = (some: readonly BeadObservation[]): readonly string[] => some.map(({ beadId }) => beadId);

export function rejectRate(
  observations: readonly BeadObservation[],
  method: ShareMethod = "wilson",
): RejectRate {
  const rejected = observations.filter(({ verdict }) => verdict === "reject");
  const decided = observations.filter(({ verdict }) => verdict === "reject" || verdict === "accept");
  return {
    rejected: shareOf(rejected.length, decided.length, method),
    decidedIds: idsOf(decided),
    rejectedIds: idsOf(rejected),
    undecidedIds: idsOf(observations.filter((one) => !decided.includes(one))),
  };
}
