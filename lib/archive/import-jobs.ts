import { canonicalJson } from "@/lib/base";
import type { Db, Tx } from "@/lib/db";
import type { ArchiveManifest, ExchangeJob, JobsAlong } from "@/lib/exchange";
import { SignedRecordSchema } from "@/lib/inspect";
import { enterForeignKey, keepSignature } from "@/lib/keys";
import { sha256Text, writeLog } from "@/lib/store";
import { jobsAlong } from "./export-jobs";

/** What would become of a job: as with beads. `differs` also where one of its inspections is another job's here. */
export interface PlannedJob {
  readonly id: string;
  readonly title: string;
  readonly fate: "new" | "same" | "differs";
  readonly ownNumber: number;
  readonly number: number;
  readonly inspections: number;
}

/** Numbers belong to the shop a job lies in, and which beads are here is the beads' own question. */
function essence({ number: _number, inspections, evidence: _evidence, ...rest }: ExchangeJob): string {
  return canonicalJson({ ...rest, inspections: inspections.map(({ number: _own, ...one }) => one) });
}

export async function planJobs(db: Db | Tx, { jobs = [] }: ArchiveManifest): Promise<readonly PlannedJob[]> {
  const numbers = new Set((await db.job.findMany({ select: { number: true } })).map(({ number }) => number));
  const planned: PlannedJob[] = [];
  for (const job of jobs) {
    const row = await db.job.findUnique({ where: { id: job.id }, select: { number: true } });
    const fate = row ? await sameOrNot(db, job) : (await foreignInspections(db, job)) ? "differs" : "new";
    const number = row?.number ?? freeNumber(job.number, numbers);
    if (fate === "new") numbers.add(number);
    const { id, content, inspections } = job;
    planned.push({
      id,
      title: content.title,
      fate,
      ownNumber: job.number,
      number,
      inspections: inspections.length,
    });
  }
  return planned;
}

/** The number it comes with, or the next after the highest where that is taken. */
export function freeNumber(own: number, taken: ReadonlySet<number>): number {
  return taken.has(own) ? Math.max(...taken) + 1 : own;
}

async function sameOrNot(db: Db | Tx, job: ExchangeJob): Promise<"same" | "differs"> {
  // Evidence is left out of the comparison, so no photo has to be looked for.
  const [here] = (await jobsAlong(db, "", [job.id])).jobs;
  return here && essence(here) === essence(job) ? "same" : "differs";
}

/** A row of another job, or a signed revision of another inspection, already has one of these ids. */
async function foreignInspections(db: Db | Tx, { inspections }: ExchangeJob): Promise<boolean> {
  const ids = inspections.map(({ id }) => id);
  const signed = inspections.flatMap((one) => one.signed.map(({ id }) => id));
  return (
    (await db.inspection.count({ where: { id: { in: ids } } })) > 0 ||
    (await db.signedRevision.count({ where: { id: { in: signed } } })) > 0
  );
}

/** The first signed revision whose text is not what was signed, or is no record of that inspection; null: none. */
export function unsoundSigned({ jobs = [] }: ArchiveManifest): { readonly number: number } | null {
  const inspections = jobs.flatMap((job) => job.inspections.map((one) => ({ ...one, jobId: job.id })));
  for (const { id, signed, number, jobId } of inspections) {
    const sound = signed.every(({ content, digest }) => {
      if (sha256Text(content) !== digest) return false;
      const record = SignedRecordSchema.safeParse(parsed(content));
      return record.success && record.data.inspection.id === id && record.data.job.id === jobId;
    });
    if (!sound) return { number };
  }
  return null;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

interface Writing {
  readonly by: string;
  /** SHA-256 of the archive, for the log. */
  readonly archive: string;
}

export const alongOf = ({ jobs = [], instruments = [], keys = [] }: ArchiveManifest): JobsAlong => ({
  jobs,
  instruments,
  keys,
});

/** Writes the jobs that are new here, with their instruments, inspections and signed revisions. */
export async function writeJobs(
  tx: Tx,
  along: JobsAlong,
  planned: readonly PlannedJob[],
  { by, archive }: Writing,
): Promise<void> {
  const fresh = new Map(
    planned.flatMap((one) => (one.fate === "new" ? [[one.id, one.number] as const] : [])),
  );
  const jobs = along.jobs.filter(({ id }) => fresh.has(id));
  const named = new Set(jobs.flatMap((job) => job.inspections.flatMap(({ draft }) => draft.instrumentIds)));
  for (const { id, content, createdAt, retiredAt } of along.instruments) {
    // One that is here keeps what is said of it here: its calibration goes on, and signed records hold their own copy.
    if (!named.has(id) || (await tx.instrument.findUnique({ where: { id } }))) continue;
    await tx.instrument.create({
      data: { id, content, createdAt: new Date(createdAt), retiredAt: retiredAt && new Date(retiredAt) },
    });
    await writeLog(tx, {
      by,
      subject: `instrument:${id}`,
      action: "instrument.imported",
      detail: { archive },
    });
  }
  const keyIds = new Set(signaturesOf(jobs).map(({ keyId }) => keyId));
  const holders = new Set(along.keys.flatMap((key) => (keyIds.has(key.id) ? [key.personId] : [])));
  for (const key of along.keys)
    if (keyIds.has(key.id) || holders.has(key.personId)) await enterForeignKey(tx, by, key, archive);
  for (const job of jobs) {
    const { id, revision, content, createdAt, updatedAt } = job;
    const number = fresh.get(id) ?? job.number;
    const times = { createdAt: new Date(createdAt), updatedAt: new Date(updatedAt) };
    await tx.job.create({ data: { id, number, revision, content, ...times } });
    const detail = { number, ownNumber: job.number, archive };
    await writeLog(tx, { by, subject: `job:${id}`, action: "job.imported", detail });
    await writeInspections(tx, job, { by, archive });
  }
}

const signaturesOf = (jobs: readonly ExchangeJob[]) =>
  jobs.flatMap(({ inspections }) =>
    inspections.flatMap(({ signed }) => signed.flatMap(({ signature }) => (signature ? [signature] : []))),
  );

async function writeInspections(tx: Tx, job: ExchangeJob, { by, archive }: Writing): Promise<void> {
  const rows = await tx.inspection.findMany({ select: { number: true } });
  const taken = new Set(rows.map(({ number }) => number));
  for (const { id, revision, draft, signed, ...one } of job.inspections) {
    const number = freeNumber(one.number, taken);
    taken.add(number);
    const times = { createdAt: new Date(one.createdAt), updatedAt: new Date(one.updatedAt) };
    await tx.inspection.create({ data: { id, number, jobId: job.id, revision, draft, ...times } });
    const detail = { number, ownNumber: one.number, archive };
    await writeLog(tx, { by, subject: `inspection:${id}`, action: "inspection.imported", detail });
    for (const { signature, ...revised } of signed) {
      await tx.signedRevision.create({ data: { ...revised, inspectionId: id } });
      // Kept whether it fits or not: what is shown of the record asks that each time. One of another record is not its.
      if (signature?.subject === `signed:${revised.id}`) await keepSignature(tx, signature);
      const sealed = { inspection: id, revision: revised.revision, digest: revised.digest, archive };
      await writeLog(tx, { by, subject: `signed:${revised.id}`, action: "record.imported", detail: sealed });
    }
  }
}

/** Puts the beads on the welds of the jobs that were written; a bead that is on a job here stays there. */
export async function placeBeads(
  tx: Tx,
  { jobs }: JobsAlong,
  planned: readonly PlannedJob[],
  by: string,
): Promise<void> {
  const fresh = new Set(planned.flatMap(({ id, fate }) => (fate === "new" ? [id] : [])));
  for (const { id: jobId, beads } of jobs.filter(({ id }) => fresh.has(id))) {
    for (const { beadId, weldId } of beads) {
      const bead = await tx.bead.findUnique({
        where: { id: beadId },
        select: { jobId: true, updatedAt: true },
      });
      if (!bead || bead.jobId !== null) continue;
      // Its own time stays: nothing that a person edits of it changed.
      await tx.bead.update({ where: { id: beadId }, data: { jobId, weldId, updatedAt: bead.updatedAt } });
      const detail = { job: jobId, weld: weldId };
      await writeLog(tx, { by, subject: `bead:${beadId}`, action: "bead.attached", detail });
    }
  }
}
