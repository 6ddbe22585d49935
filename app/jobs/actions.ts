"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import type { FormAnswer } from "@/components/ui";
import { emptyBeadJudgement } from "@/lib/assess";
import {
  attachBead,
  createBead,
  createInspection,
  createJob,
  getJob,
  recordSentence,
  saveJob,
  type RecordIssue,
} from "@/lib/record";
import { emptyRunSetup } from "@/lib/setup";
import { textOf } from "../_door/form-text";
import { actionFor, beadActionFor, welderOf } from "../_door/here";

const refused = (issues: readonly RecordIssue[]): FormAnswer => ({
  done: false,
  text: issues.map(recordSentence).join(" "),
});

export async function createJobAction(_: FormAnswer, form: FormData): Promise<FormAnswer> {
  const { pen } = await actionFor("job.write");
  const made = await createJob(pen, { title: textOf(form, "title") });
  if (!made.ok) return refused(made.issues);
  revalidatePath("/jobs");
  redirect(`/jobs/${made.value.id}`);
}

/** Answers with the new revision as `once`, so that the next save from the same window is based on it. */
export async function saveJobAction(id: string, basedOn: number, content: unknown): Promise<FormAnswer> {
  const { pen } = await actionFor("job.write");
  const saved = await saveJob(pen, id, basedOn, content);
  if (!saved.ok) return refused(saved.issues);
  revalidatePath(`/jobs/${id}`);
  return { done: true, text: "Saved.", once: String(saved.value.revision) };
}

/** A bead for a weld, with what the job knows of it: criteria, process, joint, position, thickness, welder. */
export async function newBeadForWeldAction(jobId: string, weldId: string): Promise<FormAnswer> {
  const { pen, db, actor } = await actionFor("job.write");
  const job = await getJob(db, jobId);
  const weld = job?.content.welds.find(({ id }) => id === weldId);
  if (!job || !weld) return { done: false, text: "This weld is no longer on the job. Reload the page." };
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
  if (!made.ok) return refused(made.issues);
  revalidatePath("/");
  redirect(`/beads/${made.value.id}`);
}

export async function attachBeadAction(jobId: string, _: FormAnswer, form: FormData): Promise<FormAnswer> {
  const beadId = textOf(form, "bead");
  await actionFor("job.write");
  const { pen } = await beadActionFor("bead.write", beadId);
  const weldId = textOf(form, "weld");
  const attached = await attachBead(pen, beadId, { jobId, weldId });
  revalidatePath(`/jobs/${jobId}`);
  return attached.ok ? { done: true, text: "Attached." } : refused(attached.issues);
}

export async function detachBeadAction(jobId: string, beadId: string): Promise<FormAnswer> {
  await actionFor("job.write");
  const { pen } = await beadActionFor("bead.write", beadId);
  const done = await attachBead(pen, beadId, null);
  revalidatePath(`/jobs/${jobId}`);
  return done.ok ? { done: true, text: "Taken off." } : refused(done.issues);
}

export async function beginInspectionAction(jobId: string): Promise<FormAnswer> {
  const { pen } = await actionFor("job.write");
  const begun = await createInspection(pen, jobId);
  if (!begun.ok) return refused(begun.issues);
  revalidatePath(`/jobs/${jobId}`);
  redirect(`/inspections/${begun.value.id}`);
}
