"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import type { Stored } from "@/components/saving/saver";
import type { SavedAndSaid } from "@/components/saving/use-edited";
import type { Said } from "@/components/ui";
import { emptyBeadJudgement } from "@/lib/assess";
import { fail, issue, ok, type Answer } from "@/lib/base";
import { attachBead, createBead, createInspection, createJob, getJob, saveJob } from "@/lib/record";
import type { JobContent } from "@/lib/inspect";
import { emptyRunSetup } from "@/lib/setup";
import { recordAnswer, recordSaid } from "../_door/answer";
import { textOf } from "../_door/form-text";
import { actionFor, beadActionFor, welderOf } from "../_door/here";

export async function createJobAction(_: Answer<Said>, form: FormData): Promise<Answer<Said>> {
  const { pen } = await actionFor("job.write");
  const made = await createJob(pen, { title: textOf(form, "title") });
  if (!made.ok) return recordAnswer(made);
  revalidatePath("/jobs");
  redirect(`/jobs/${made.value.id}`);
}

export async function saveJobAction(
  id: string,
  basedOn: number,
  content: unknown,
): Promise<Answer<SavedAndSaid>> {
  const { pen } = await actionFor("job.write");
  const saved = await saveJob(pen, id, basedOn, content);
  if (!saved.ok) return recordAnswer(saved);
  revalidatePath(`/jobs/${id}`);
  return ok({ text: "Saved.", revision: saved.value.revision });
}

export async function readJobAction(id: string): Promise<Answer<Stored<JobContent>>> {
  const { db } = await actionFor("job.write");
  const job = await getJob(db, id);
  return job ? ok({ revision: job.revision, content: job.content }) : recordAnswer(fail(issue("job-gone")));
}

/** A bead for a weld, with what the job knows of it: criteria, process, joint, position, thickness, welder. */
export async function newBeadForWeldAction(jobId: string, weldId: string): Promise<Answer<Said>> {
  const { pen, db, actor } = await actionFor("job.write");
  const job = await getJob(db, jobId);
  const weld = job?.content.welds.find(({ id }) => id === weldId);
  if (!job || !weld) return recordAnswer(fail(issue("weld-gone")));
  const part = job.content.parts.find(({ id }) => id === weld.partId);
  const made = await createBead(pen, {
    title: `Job ${job.number}, weld ${weld.number}`,
    welderId: weld.welderId ?? welderOf(actor),
    jobId,
    weldId,
    judgement: { ...emptyBeadJudgement, criteriaId: job.content.criteriaId },
    setup: {
      ...emptyRunSetup,
      process: job.content.process,
      joint: weld.joint,
      position: weld.position,
      thicknessMm: part?.thicknessMm ?? null,
    },
  });
  if (!made.ok) return recordAnswer(made);
  revalidatePath("/");
  redirect(`/beads/${made.value.id}`);
}

export async function attachBeadAction(
  jobId: string,
  _: Answer<Said>,
  form: FormData,
): Promise<Answer<Said>> {
  const beadId = textOf(form, "bead");
  await actionFor("job.write");
  const { pen } = await beadActionFor("bead.write", beadId);
  const weldId = textOf(form, "weld");
  const attached = await attachBead(pen, beadId, { jobId, weldId });
  revalidatePath(`/jobs/${jobId}`);
  return recordSaid(attached, "Attached.");
}

export async function detachBeadAction(jobId: string, beadId: string): Promise<Answer<Said>> {
  await actionFor("job.write");
  const { pen } = await beadActionFor("bead.write", beadId);
  const done = await attachBead(pen, beadId, null);
  revalidatePath(`/jobs/${jobId}`);
  return recordSaid(done, "Taken off.");
}

export async function beginInspectionAction(jobId: string): Promise<Answer<Said>> {
  const { pen } = await actionFor("job.write");
  const begun = await createInspection(pen, jobId);
  if (!begun.ok) return recordAnswer(begun);
  revalidatePath(`/jobs/${jobId}`);
  redirect(`/inspections/${begun.value.id}`);
}
