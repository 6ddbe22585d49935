import { listCriteria } from "@/lib/accept";
import { assessBead } from "@/lib/assess";
import { canonicalJson, fail, issue, ok, type Result } from "@/lib/base";
import { getBead, type BeadRecord } from "@/lib/beads";
import type { Db } from "@/lib/db";
import {
  emptyInspection,
  InspectionDraftSchema,
  lookedAt,
  makeRecord,
  type InspectionDraft,
  type SignedRecord,
} from "@/lib/inspect";
import { assessContext } from "@/lib/shop";
import { newId, writing, type Pen, type RecordIssue } from "@/lib/store";
import { listInstruments } from "./instruments";
import { beadsOfJob, getJob, toJob } from "./jobs";

export interface InspectionRecord {
  readonly id: string;
  readonly number: number;
  readonly jobId: string;
  readonly revision: number;
  readonly createdAt: string;
  readonly draft: InspectionDraft;
  /** How often it was signed. */
  readonly signed: number;
  /** Whether its newest revision came with an archive: then a list does not call it signed. */
  readonly imported: boolean;
}

const counted = { _count: { select: { signed: true } } } as const;
type Row = {
  id: string;
  number: number;
  jobId: string;
  revision: number;
  createdAt: Date;
  draft: unknown;
  _count: { signed: number };
};
const toInspection = (
  { createdAt, draft, _count, id, number, jobId, revision }: Row,
  imported = false,
): InspectionRecord => ({
  id,
  number,
  jobId,
  revision,
  createdAt: createdAt.toISOString(),
  draft: InspectionDraftSchema.parse(draft),
  signed: _count.signed,
  imported,
});

/** Inspections whose newest revision came with an archive, by the log's word. */
async function importedOnes(db: Db): Promise<ReadonlySet<string>> {
  const entries = await db.logEntry.findMany({
    where: { action: "record.imported" },
    select: { subject: true },
  });
  const ids = new Set(entries.map(({ subject }) => subject.slice("signed:".length)));
  if (ids.size === 0) return ids;
  const rows = await db.signedRevision.findMany({
    orderBy: { revision: "asc" },
    select: { id: true, inspectionId: true },
  });
  const newest = new Map(rows.map(({ id, inspectionId }) => [inspectionId, id]));
  return new Set([...newest].flatMap(([inspectionId, id]) => (ids.has(id) ? [inspectionId] : [])));
}

/** Every inspection, or those of one job, newest first. */
export async function listInspections(
  db: Db,
  only: { readonly jobId?: string } = {},
): Promise<readonly InspectionRecord[]> {
  const rows = await db.inspection.findMany({ where: only, include: counted, orderBy: { number: "desc" } });
  const imported = await importedOnes(db);
  return rows.map((row) => toInspection(row, imported.has(row.id)));
}

/** A part of the inspections of a job, newest first. */
export interface InspectionPage {
  readonly inspections: readonly InspectionRecord[];
  /** Id of the last of them where older ones follow; null: this was the last page. */
  readonly next: string | null;
}

/**
 * The inspections of a job a page at a time: so many of those older than `after`, the id of one of them, which the database
 * finds without reading the newer ones. Null: `after` is no inspection of this job.
 */
export async function inspectionPage(
  db: Db,
  jobId: string,
  { limit, after }: { readonly limit: number; readonly after?: string | undefined },
): Promise<InspectionPage | null> {
  const last = after === undefined ? null : await db.inspection.findUnique({ where: { id: after } });
  if (after !== undefined && last?.jobId !== jobId) return null;
  const rows = await db.inspection.findMany({
    where: { jobId, ...(last ? { number: { lt: last.number } } : {}) },
    include: counted,
    orderBy: { number: "desc" },
    take: limit + 1,
  });
  const imported = await importedOnes(db);
  const shown = rows.slice(0, limit);
  return {
    inspections: shown.map((row) => toInspection(row, imported.has(row.id))),
    next: rows.length > limit ? (shown.at(-1)?.id ?? null) : null,
  };
}

export async function getInspection(db: Db, id: string): Promise<InspectionRecord | null> {
  const row = await db.inspection.findUnique({ where: { id }, include: counted });
  return row && toInspection(row, (await importedOnes(db)).has(id));
}

/** As many of the newest inspections are looked at for one that is not signed: a reminder must not read them all. */
const NEWEST = 20;

/** An inspection that is not signed, and of how many of its welds nobody said yet how much was seen. */
export interface OpenInspection {
  readonly id: string;
  readonly number: number;
  readonly welds: number;
  readonly unseen: number;
}

/** The newest inspections whose draft is open, at most `most` of them. */
export async function newestOpen(db: Db, most: number): Promise<readonly OpenInspection[]> {
  const rows = await db.inspection.findMany({
    orderBy: { number: "desc" },
    take: NEWEST,
    select: { id: true, number: true, draft: true },
  });
  return rows
    .map(({ id, number, draft }) => ({ id, number, draft: InspectionDraftSchema.parse(draft) }))
    .filter(({ draft }) => draft.open)
    .slice(0, most)
    .map(({ id, number, draft: { welds } }) => ({
      ...{ id, number, welds: welds.length },
      unseen: welds.filter(({ seen }) => seen === null).length,
    }));
}

/** A new inspection of a job: all its welds ticked; how much of each was seen, and everything else, unsaid. */
export async function createInspection(
  pen: Pen,
  jobId: string,
): Promise<Result<InspectionRecord, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const job = await tx.job.findUnique({ where: { id: jobId } });
    if (!job) return fail(issue("job-gone"));
    const welds = toJob(job).content.welds.map(({ id }) => ({ weldId: id, seen: null, seenNote: "" }));
    const last = await tx.inspection.findFirst({ orderBy: { number: "desc" }, select: { number: true } });
    const number = (last?.number ?? 0) + 1;
    const row = await tx.inspection.create({
      data: { id: newId(), number, jobId, draft: { ...emptyInspection, welds } },
      include: counted,
    });
    await log(`inspection:${row.id}`, "inspection.begun", { number, job: jobId });
    return ok(toInspection(row));
  });
}

/** Saves the draft if it is still at revision `basedOn` and open. Whether it is open is not for the form to say. */
export async function saveInspection(
  pen: Pen,
  id: string,
  basedOn: number,
  input: unknown,
): Promise<Result<{ readonly revision: number }, RecordIssue>> {
  const parsed = InspectionDraftSchema.safeParse(input);
  if (!parsed.success)
    return fail(issue("inspection-not-understood", parsed.error.issues[0]?.path.map(String) ?? []));
  return writing(pen, async (tx, log) => {
    const row = await tx.inspection.findUnique({ where: { id } });
    if (!row) return fail(issue("inspection-gone"));
    if (!InspectionDraftSchema.parse(row.draft).open) return fail(issue("inspection-signed"));
    if (row.revision !== basedOn) return fail(issue("inspection-changed-elsewhere"));
    const draft = { ...parsed.data, open: true };
    // A form that saves by itself sends what is there already: the log holds changes.
    if (canonicalJson(draft) === canonicalJson(row.draft)) return ok({ revision: basedOn });
    const revision = basedOn + 1;
    await tx.inspection.update({ where: { id }, data: { draft, revision } });
    await log(`inspection:${id}`, "inspection.saved", { revision });
    return ok({ revision });
  });
}

/** Opens a signed inspection for a correction. What was signed stays as it is. */
export async function correctInspection(pen: Pen, id: string): Promise<Result<null, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const row = await tx.inspection.findUnique({ where: { id } });
    if (!row) return fail(issue("inspection-gone"));
    const draft = InspectionDraftSchema.parse(row.draft);
    if (draft.open) return ok(null);
    const revision = row.revision + 1;
    await tx.inspection.update({ where: { id }, data: { draft: { ...draft, open: true }, revision } });
    await log(`inspection:${id}`, "inspection.reopened", { revision });
    return ok(null);
  });
}

/** The beads of a job as they are now. */
export async function jobBeads(db: Db, jobId: string): Promise<readonly BeadRecord[]> {
  const beads = await Promise.all((await beadsOfJob(db, jobId)).map((id) => getBead(db, id)));
  return beads.filter((bead) => bead !== null);
}

/** The record as it would be signed now; null when the inspection is gone. */
export async function draftRecord(db: Db, id: string): Promise<SignedRecord | null> {
  const inspection = await getInspection(db, id);
  const job = inspection && (await getJob(db, inspection.jobId));
  if (!job) return null;
  const { draft, number } = inspection;
  const instruments = (await listInstruments(db)).filter((one) => draft.instrumentIds.includes(one.id));
  const people = await db.person.findMany({
    where: { mark: { not: null } },
    select: { id: true, mark: true },
  });
  const context = await assessContext(db);
  const criteria = listCriteria(context.shopSets).find((set) => set.id === job.content.criteriaId);
  const looked = new Set(lookedAt(job.content, draft).map((weld) => weld.id));
  const beads = (await jobBeads(db, job.id)).flatMap((bead) => {
    const { weldId } = bead;
    return weldId !== null && looked.has(weldId) ? [{ ...assessBead(bead, context), weldId }] : [];
  });
  return makeRecord({
    inspection: { id, number },
    job: { id: job.id, number: job.number, revision: job.revision, content: job.content },
    criteria: criteria ? `${criteria.title}, ${criteria.edition}` : job.content.criteriaId,
    shopSets: context.shopSets,
    draft,
    instruments: instruments.map((one) => ({ id: one.id, ...one.content })),
    marks: Object.fromEntries(people.map((person) => [person.id, person.mark ?? ""])),
    beads,
  });
}
