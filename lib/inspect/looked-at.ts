import type { InspectionDraft } from "./draft";
import type { JobContent, JobWeld } from "./job";

/** The welds of the job that this inspection looked at, in the job's order. */
export function lookedAt(job: JobContent, draft: InspectionDraft): readonly JobWeld[] {
  const ids = new Set(draft.welds.map(({ weldId }) => weldId));
  return job.welds.filter(({ id }) => ids.has(id));
}
