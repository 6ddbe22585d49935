import { extentStanding, type ExtentStanding } from "./extent-standing";
import type { InspectionDraft } from "./draft";
import type { Instrument } from "./instrument";
import type { JobContent, JobWeld } from "./job";
import { isAsAsked } from "./asked-size";
import { lookedAt } from "./looked-at";
import { certificateOn } from "./qualification";
import { readingDoubts } from "./reading-doubts";
import type { InspectionResult, SignedBead } from "./signed-record";

export interface WeldsInput {
  readonly job: JobContent;
  readonly draft: InspectionDraft;
  /** Those ticked as used. */
  readonly instruments: readonly Instrument[];
  readonly beads: readonly SignedBead[];
}

/** The worst of several: a fault outweighs what is open, and what is open outweighs what is met. */
export function worst(all: readonly InspectionResult[]): InspectionResult {
  if (all.includes("not-accepted")) return "not-accepted";
  return all.length === 0 || all.includes("open") ? "open" : "accepted";
}

/** How what was seen of a weld stands to what the job asks of it. Said twice otherwise is not said at all. */
export function weldExtent({ asked, lengthMm, id }: JobWeld, { welds }: InspectionDraft): ExtentStanding {
  const [looked, ...again] = welds.filter(({ weldId }) => weldId === id);
  return extentStanding(asked, again.length > 0 ? null : (looked?.seen ?? null), lengthMm);
}

/**
 * The result of each weld looked at, in the job's order. "accepted" asks five things at once: every bead on it met its
 * clauses, all that was asked of it was seen, every reading on it was taken with a gauge known to be valid that day, the
 * beads are of the size and length that is asked, and the inspector's certificate had not ended.
 * A fault that was found stays one, however little was seen.
 */
export function weldResults({ job, draft, instruments, beads }: WeldsInput): readonly {
  readonly weldId: string;
  readonly result: InspectionResult;
}[] {
  return lookedAt(job, draft).map((weld) => {
    const own = beads.filter(({ weldId }) => weldId === weld.id);
    const found = worst(own.map(({ result }) => result));
    const isSeen = weldExtent(weld, draft).kind === "full";
    const isRead = readingDoubts(own, instruments, draft.examinedOn).length === 0;
    const isEntitled = certificateOn(draft.qualification ?? undefined, draft.examinedOn) !== "expired";
    const isSized = isAsAsked(weld, own);
    const isClosed = isSeen && isRead && isEntitled && isSized;
    return { weldId: weld.id, result: found === "accepted" && !isClosed ? "open" : found };
  });
}
