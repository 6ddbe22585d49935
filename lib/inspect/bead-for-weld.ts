import { emptyBeadJudgement, type BeadContent } from "@/lib/assess";
import { emptyRunSetup } from "@/lib/setup";
import type { JobContent, JobWeld } from "./job";

/**
 * What a bead for a weld of a job begins with: criteria, process, joint, position and thickness as the job says them. What
 * the job does not say is unknown, and nothing of it was looked at.
 */
export function beadForWeld(
  job: { readonly number: number; readonly content: Pick<JobContent, "criteriaId" | "process" | "parts"> },
  weld: JobWeld,
): Pick<BeadContent, "title" | "setup" | "judgement"> {
  const { criteriaId, process, parts } = job.content;
  const part = parts.find(({ id }) => id === weld.partId);
  return {
    title: `Job ${job.number}, weld ${weld.number}`,
    judgement: { ...emptyBeadJudgement, criteriaId },
    setup: {
      ...emptyRunSetup,
      process,
      joint: weld.joint,
      position: weld.position,
      thicknessMm: part?.thicknessMm ?? null,
    },
  };
}
