import { fail, issue, ok, type Result } from "@/lib/base";
import type { Db } from "@/lib/db";
import { JobContentSchema, type JobContent } from "@/lib/inspect";
import { newId, writing, type Pen, type RecordIssue } from "@/lib/store";

export interface JobRecord {
  readonly id: string;
  readonly number: number;
  readonly revision: number;
  readonly createdAt: string;
  readonly content: JobContent;
}

type Row = { id: string; number: number; revision: number; createdAt: Date; content: unknown };

export const toJob = ({ id, number, revision, createdAt, content }: Row): JobRecord => ({
  id,
  number,
  revision,
  createdAt: createdAt.toISOString(),
  content: JobContentSchema.parse(content),
});

/** Every job, newest first. */
export async function listJobs(db: Db): Promise<readonly JobRecord[]> {
  return (await db.job.findMany({ orderBy: { number: "desc" } })).map(toJob);
}

export async function getJob(db: Db, id: string): Promise<JobRecord | null> {
  const row = await db.job.findUnique({ where: { id } });
  return row && toJob(row);
}

function parseJob(input: unknown): Result<JobContent, RecordIssue> {
  const parsed = JobContentSchema.safeParse(input);
  if (parsed.success) return ok(parsed.data);
  const path = (parsed.error.issues[0]?.path ?? []).map((part) =>
    typeof part === "number" ? part + 1 : String(part),
  );
  return fail(issue("job-not-understood", path));
}

/** A new job with the next running number. */
export async function createJob(pen: Pen, input: unknown): Promise<Result<JobRecord, RecordIssue>> {
  const parsed = parseJob(input);
  if (!parsed.ok) return parsed;
  return writing(pen, async (tx, log) => {
    const last = await tx.job.findFirst({ orderBy: { number: "desc" }, select: { number: true } });
    const number = (last?.number ?? 0) + 1;
    const row = await tx.job.create({ data: { id: newId(), number, content: parsed.value } });
    await log(`job:${row.id}`, "job.made", { number });
    return ok(toJob(row));
  });
}

/** Saves a job if it is still at revision `basedOn`. A weld that carries beads cannot be struck off. */
export async function saveJob(
  pen: Pen,
  id: string,
  basedOn: number,
  input: unknown,
): Promise<Result<{ readonly revision: number }, RecordIssue>> {
  const parsed = parseJob(input);
  if (!parsed.ok) return parsed;
  return writing(pen, async (tx, log) => {
    const row = await tx.job.findUnique({ where: { id }, include: { beads: { select: { weldId: true } } } });
    if (!row) return fail(issue("job-gone"));
    if (row.revision !== basedOn) return fail(issue("job-changed-elsewhere"));
    const kept = new Set(parsed.value.welds.map((weld) => weld.id));
    const lost = toJob(row).content.welds.find(
      (weld) => !kept.has(weld.id) && row.beads.some(({ weldId }) => weldId === weld.id),
    );
    if (lost) return fail(issue("weld-has-beads", [], { weld: lost.number }));
    const revision = basedOn + 1;
    await tx.job.update({ where: { id }, data: { content: parsed.value, revision } });
    await log(`job:${id}`, "job.saved", { revision });
    return ok({ revision });
  });
}

/** Puts a bead on a weld of a job, or takes it off (`null`). Its revision stays: nothing a person edits changed. */
export async function attachBead(
  pen: Pen,
  beadId: string,
  to: { readonly jobId: string; readonly weldId: string } | null,
): Promise<Result<null, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    if (!(await tx.bead.findUnique({ where: { id: beadId }, select: { id: true } })))
      return fail(issue("bead-gone"));
    if (to) {
      const job = await tx.job.findUnique({ where: { id: to.jobId } });
      if (!job) return fail(issue("job-gone"));
      if (!toJob(job).content.welds.some(({ id }) => id === to.weldId)) return fail(issue("weld-gone"));
    }
    await tx.bead.update({
      where: { id: beadId },
      data: { jobId: to?.jobId ?? null, weldId: to?.weldId ?? null },
    });
    await log(
      `bead:${beadId}`,
      to ? "bead.attached" : "bead.detached",
      to ? { job: to.jobId, weld: to.weldId } : {},
    );
    return ok(null);
  });
}

/** Ids of the beads on a job, oldest first. */
export async function beadsOfJob(db: Db, jobId: string): Promise<readonly string[]> {
  const rows = await db.bead.findMany({ where: { jobId }, orderBy: { number: "asc" }, select: { id: true } });
  return rows.map(({ id }) => id);
}
