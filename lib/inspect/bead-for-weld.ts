import { emptyBeadJudgement, type BeadContent } from "@/lib/assess";
import { emptyRunSetup } from "@/lib/setup";
import { askedLegMm } from "./asked-size";
import { criteriaOf, type JobContent, type JobWeld } from "./job";

/**
 * What a bead for a weld of a job begins with: criteria, process, joint, position, thickness and leg as the job says them. What
 * the job does not say is unknown, and nothing of it was looked at.
 */
export function beadForWeld(
  job: { readonly number: number; readonly content: Pick<JobContent, "criteriaId" | "process" | "parts"> },
  weld: JobWeld,
): Pick<BeadContent, "title" | "setup" | "judgement"> {
  const { process, parts } = job.content;
  const part = parts.find(({ id }) => id === weld.partId);
  return {
    title: `Job ${job.number}, weld ${weld.number}`,
    judgement: { ...emptyBeadJudgement, criteriaId: criteriaOf(job.content, weld) },
    setup: {
      ...emptyRunSetup,
      process,
      joint: weld.joint,
      position: weld.position,
      thicknessMm: part?.thicknessMm ?? null,
      targetLegMm: askedLegMm(weld),
    },
  };
}
