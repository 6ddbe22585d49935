"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import type { SavedAndSaid, Stored } from "@/components/saving";
import type { FoundBead } from "@/components/inspect";
import type { Said } from "@/components/ui";
import { newestBeads, UNKNOWN } from "@/lib/find";
import { fail, issue, ok, type Answer } from "@/lib/base";
import { createBead } from "@/lib/beads";
import { attachBead, createInspection, createJob, getJob, saveJob } from "@/lib/jobs";
import { beadForWeld, type JobContent } from "@/lib/inspect";
import { actionFor, anything, basedOn, form, id, words } from "../_door/action-for";
import { recordAnswer, recordSaid } from "../_door/answer";
import { textOf } from "../_door/form-text";
import { mustOnBead } from "../_door/here";

export const createJobAction = actionFor(
  "job.write",
  [anything, form],
  async ({ pen }, _, form): Promise<Answer<Said>> => {
    const made = await createJob(pen, { title: textOf(form, "title") });
    if (!made.ok) return recordAnswer(made);
    revalidatePath("/jobs");
    redirect(`/jobs/${made.value.id}`);
  },
);

export const saveJobAction = actionFor(
  "job.write",
  [id, basedOn, anything],
  async ({ pen }, id, basedOn, content): Promise<Answer<SavedAndSaid>> => {
    const saved = await saveJob(pen, id, basedOn, content);
    if (!saved.ok) return recordAnswer(saved);
    revalidatePath(`/jobs/${id}`);
    return ok({ text: "Saved.", revision: saved.value.revision });
  },
);

export const readJobAction = actionFor(
  "job.write",
  [id],
  async ({ db }, id): Promise<Answer<Stored<JobContent>>> => {
    const job = await getJob(db, id);
    return job ? ok({ revision: job.revision, content: job.content }) : recordAnswer(fail(issue("job-gone")));
  },
);

/** A bead for a weld, with what the job knows of it: criteria, process, joint, position, thickness, welder. */
export const newBeadForWeldAction = actionFor(
  "job.write",
  [id, id],
  async ({ pen, db }, jobId, weldId): Promise<Answer<Said>> => {
    const job = await getJob(db, jobId);
    const weld = job?.content.welds.find(({ id }) => id === weldId);
    if (!job || !weld) return recordAnswer(fail(issue("weld-gone")));
    const made = await createBead(pen, {
      ...beadForWeld(job, weld),
      // Who ran it is known from the weld alone: as a person, or by the mark that the job says. Whoever inspects did not.
      welderId: weld.welderId,
      ...(weld.welderId === null && weld.welderMark ? { welder: weld.welderMark } : {}),
      jobId,
      weldId,
    });
    if (!made.ok) return recordAnswer(made);
    revalidatePath("/");
    redirect(`/beads/${made.value.id}`);
  },
);

export const attachBeadAction = actionFor(
  "job.write",
  [id, id, id],
  async (now, jobId, beadId, weldId): Promise<Answer<Said>> => {
    await mustOnBead(now, "bead.write", beadId);
    const attached = await attachBead(now.pen, beadId, { jobId, weldId });
    revalidatePath(`/jobs/${jobId}`);
    revalidatePath("/inspections", "layout");
    return recordSaid(attached, "Attached.");
  },
);

/** So many beads are offered to be attached; whoever wants another one says more words. */
const OFFERED = 12;

/** Beads on no job, by words or "#12". */
export const findFreeBeadsAction = actionFor(
  "job.write",
  [words],
  async ({ db }, words): Promise<Answer<readonly FoundBead[]>> => {
    const text = words.trim().slice(0, 80);
    const found = await newestBeads(
      db,
      { job: UNKNOWN, ...(text ? { q: text } : {}) },
      {},
      { most: OFFERED },
    );
    return ok(found.map(({ id, number, title }) => ({ id, number, title })));
  },
);

export const detachBeadAction = actionFor(
  "job.write",
  [id, id],
  async (now, jobId, beadId): Promise<Answer<Said>> => {
    await mustOnBead(now, "bead.write", beadId);
    const done = await attachBead(now.pen, beadId, null);
    revalidatePath(`/jobs/${jobId}`);
    return recordSaid(done, "Taken off.");
  },
);

export const beginInspectionAction = actionFor(
  "job.write",
  [id],
  async ({ pen }, jobId): Promise<Answer<Said>> => {
    const begun = await createInspection(pen, jobId);
    if (!begun.ok) return recordAnswer(begun);
    revalidatePath(`/jobs/${jobId}`);
    redirect(`/inspections/${begun.value.id}`);
  },
);
