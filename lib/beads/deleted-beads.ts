import { fail, issue, ok, type Result } from "@/lib/base";
import { change, dialect, forgetFreed, type Db, type Tx } from "@/lib/db";
import { newId, writing, type Pen, type RecordIssue } from "@/lib/store";
import { letGoPhoto } from "./attach-photo";
import { nextBeadNumber } from "./beads";
import { keepFacts } from "./keep-facts";
import { wholeBead, type WholeBead } from "./whole-bead";

/** How long a deleted bead can be brought back, days. */
export const KEPT_DAYS = 30;
const DAY_MS = 86_400_000;

/** The last moment at which what was deleted then can be brought back. */
const lastMoment = (deletedAt: Date): Date => new Date(deletedAt.getTime() + KEPT_DAYS * DAY_MS);

/** A deleted bead, as a list shows it. */
export interface DeletedBeadRecord {
  readonly id: string;
  readonly number: number;
  readonly title: string;
  readonly welderId: string | null;
  /** ISO 8601, UTC. */
  readonly deletedAt: string;
  readonly restorableUntil: string;
}

/** What keeps a bead from being deleted; null: nothing does. */
export async function deletionRefusal(db: Db | Tx, id: string): Promise<RecordIssue | null> {
  const bead = await db.bead.findUnique({ where: { id }, select: { handIn: { select: { id: true } } } });
  if (!bead) return issue("bead-gone");
  if (bead.handIn) return issue("bead-handed-in");
  const signed = await db.signedRevision.findFirst({
    where: { content: { contains: `"${id}"` } },
    select: { id: true },
  });
  return signed ? issue("bead-signed") : null;
}

/**
 * Takes a bead that no frozen record speaks of out of the list and keeps it whole for `KEPT_DAYS`; its photos stay in the
 * store as long. Beads that were run after it lose their pointer until it is back.
 *
 * @returns The id under which it lies among the deleted ones.
 */
export async function deleteBead(
  pen: Pen,
  id: string,
  now: Date,
): Promise<Result<{ readonly deletedId: string }, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const refusal = await deletionRefusal(tx, id);
    if (refusal) return fail(refusal);
    const row = await tx.bead.findUniqueOrThrow({ where: { id }, include: { photos: true, next: true } });
    const deletedId = newId();
    const { number, title, welder, welderId } = row;
    await tx.deletedBead.create({
      data: {
        ...{ id: deletedId, beadId: id, number, title, welder, welderId },
        content: wholeBead.textOf(row),
        deletedAt: now,
      },
    });
    await tx.bead.delete({ where: { id } });
    await log(`bead:${id}`, "bead.deleted", { number });
    await log(`deleted-bead:${deletedId}`, "deleted-bead.kept", { bead: id });
    for (const next of row.next) await log(`bead:${next.id}`, "bead.previous-deleted", { previous: id });
    return ok({ deletedId });
  });
}

/** Those that can still be brought back, the last deleted first. */
export async function listDeletedBeads(
  db: Db,
  only: { readonly welderId?: string },
  now: Date,
): Promise<readonly DeletedBeadRecord[]> {
  const rows = await db.deletedBead.findMany({
    where: { ...only, content: { not: null } },
    orderBy: { deletedAt: "desc" },
  });
  return rows
    .filter(({ deletedAt }) => now <= lastMoment(deletedAt))
    .map(({ id, number, title, welderId, deletedAt }) => ({
      ...{ id, number, title, welderId },
      deletedAt: deletedAt.toISOString(),
      restorableUntil: lastMoment(deletedAt).toISOString(),
    }));
}

/** To whom a deleted bead belongs; null when there is none of this id. */
export async function deletedBeadThing(
  db: Db,
  deletedId: string,
): Promise<{ readonly personId: string | null; readonly beadId: string } | null> {
  const row = await db.deletedBead.findUnique({ where: { id: deletedId } });
  return row && { personId: row.welderId, beadId: row.beadId };
}

/** Puts a deleted bead back as it was: its state is the one that the log sealed before it was deleted. */
export async function restoreBead(
  pen: Pen,
  deletedId: string,
  now: Date,
): Promise<Result<{ readonly beadId: string; readonly number: number }, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const row = await tx.deletedBead.findUnique({ where: { id: deletedId } });
    if (!row) return fail(issue("bead-not-deleted"));
    if (row.content === null || now > lastMoment(row.deletedAt)) return fail(issue("bead-erased"));
    if (await tx.bead.findUnique({ where: { id: row.beadId }, select: { id: true } }))
      return fail(issue("bead-there-already"));
    const whole = wholeBead.fromText(row.content);
    const number = await freeNumber(tx, row.number);
    const data = { ...(await withWhatIsThere(tx, whole.row)), number, welder: row.welder };
    await tx.bead.create({ data: { ...data, photos: { create: [...whole.photos] } } });
    await keepFacts(tx, row.beadId);
    await tx.deletedBead.delete({ where: { id: deletedId } });
    await log(`deleted-bead:${deletedId}`, "deleted-bead.taken-back", { bead: row.beadId });
    await log(`bead:${row.beadId}`, "bead.restored", { number });
    for (const next of await pointBack(tx, row.beadId, whole.nextIds))
      await log(`bead:${next}`, "bead.previous-restored", { previous: row.beadId });
    return ok({ beadId: row.beadId, number });
  });
}

/** Its own number, unless a bead that was imported meanwhile has it. */
async function freeNumber(tx: Tx, own: number): Promise<number> {
  return (await tx.bead.count({ where: { number: own } })) > 0 ? nextBeadNumber(tx) : own;
}

/** Without pointers to what is gone since: the bead before, the person, the job or its weld. */
async function withWhatIsThere(tx: Tx, row: WholeBead["row"]): Promise<WholeBead["row"]> {
  const { previousId, welderId, jobId, weldId } = row;
  const isThere = async (count: Promise<number> | null) => count !== null && (await count) > 0;
  const previous = await isThere(previousId ? tx.bead.count({ where: { id: previousId } }) : null);
  const welder = await isThere(welderId ? tx.person.count({ where: { id: welderId } }) : null);
  const job = jobId ? await tx.job.findUnique({ where: { id: jobId }, select: { content: true } }) : null;
  const { welds = [] } = (job?.content ?? {}) as { readonly welds?: readonly { readonly id: string }[] };
  const weld = welds.some(({ id }) => id === weldId);
  return {
    ...row,
    previousId: previous ? previousId : null,
    welderId: welder ? welderId : null,
    jobId: weld ? jobId : null,
    weldId: weld ? weldId : null,
  };
}

/** The beads that were run after it point to it again, but for those that point elsewhere by now. */
async function pointBack(tx: Tx, beadId: string, nextIds: readonly string[]): Promise<readonly string[]> {
  const pointed: string[] = [];
  for (const id of nextIds) {
    const { count } = await tx.bead.updateMany({
      where: { id, previousId: null },
      data: { previousId: beadId },
    });
    if (count > 0) pointed.push(id);
  }
  return pointed;
}

/**
 * Erases what was deleted more than `KEPT_DAYS` ago, its photos with it where nothing else needs them. Number and ids
 * stay, so that no other bead is ever called by that number; of the words no byte stays in the database's file. Says how
 * many were erased.
 */
export async function eraseDeletedBeads(pen: Pen, dataDir: string, now: Date): Promise<number> {
  const before = new Date(now.getTime() - KEPT_DAYS * DAY_MS);
  const due = await pen.db.deletedBead.findMany({
    where: { content: { not: null }, deletedAt: { lt: before } },
    orderBy: { deletedAt: "asc" },
  });
  for (const { id, content } of due) {
    await writing(pen, async (tx, log) => {
      await tx.deletedBead.update({
        where: { id },
        data: { content: null, title: "", welder: null, welderId: null },
      });
      await log(`deleted-bead:${id}`, "deleted-bead.erased");
      return ok(null);
    });
    for (const { sha256 } of wholeBead.fromText(content ?? "").photos)
      await letGoPhoto(pen.db, dataDir, sha256);
  }
  if (due.length > 0) {
    await change(pen.db, dialect.tidyWords());
    await forgetFreed(pen.db);
  }
  return due.length;
}
