import {
  BeadContentSchema,
  countBeadPoints,
  emptyBeadContent,
  newPhotoContent,
  type BeadContent,
  type PhotoRole,
} from "@/lib/assess";
import { canonicalJson, fail, issue, ok, type Result } from "@/lib/base";
import type { Tx } from "@/lib/db";
import { MOST_POINTS } from "@/lib/marks";
import { newId, writing, type Log, type Pen, type RecordIssue } from "@/lib/store";
import type { BeadRecord, PhotoRecord } from "./bead-record";
import { changedParts } from "./changed-parts";
import { keepFacts } from "./keep-facts";
import { photoColumn } from "./photo-column";
import { readOwn, roleOf, toRecord, withPhotos } from "./read-bead";

/** The database counts to 2^31; one bead of a stranger's archive that stands at the end must not stop the others. */
const HIGHEST_COUNTED = 1_900_000_000;

/** The next running number: that of a bead that was deleted stays its own. */
export async function nextBeadNumber(tx: Tx): Promise<number> {
  const newest = {
    where: { number: { lt: HIGHEST_COUNTED } },
    orderBy: { number: "desc" },
    select: { number: true },
  } as const;
  const [bead, deleted] = [await tx.bead.findFirst(newest), await tx.deletedBead.findFirst(newest)];
  return Math.max(bead?.number ?? 0, deleted?.number ?? 0) + 1;
}

export interface BeadStart extends Partial<Pick<BeadContent, "title" | "welder" | "setup" | "judgement">> {
  /** Made by the device that began the bead, `isNewId`; left out: made here. */
  id?: string;
  createdAt?: Date;
  previousId?: string;
  /** Person who ran it. */
  welderId?: string | null;
  jobId?: string | null;
  weldId?: string | null;
}

/**
 * A new bead with the next running number; what `start` leaves out stays empty. With an id that is taken, by a bead or by
 * one that was deleted, none is made.
 */
export async function createBead(pen: Pen, start: BeadStart = {}): Promise<Result<BeadRecord, RecordIssue>> {
  return writing(pen, (tx, log) => makeBead(tx, log, start));
}

/** As `createBead`, within a change that does more. */
export async function makeBead(tx: Tx, log: Log, start: BeadStart): Promise<Result<BeadRecord, RecordIssue>> {
  if (start.id !== undefined && (await isTaken(tx, start.id))) return fail(issue("bead-there-already"));
  const number = await nextBeadNumber(tx);
  const row = await tx.bead.create({
    data: {
      id: start.id ?? newId(),
      number,
      title: start.title ?? `Bead ${number}`,
      welder: start.welder ?? null,
      setup: start.setup ?? emptyBeadContent.setup,
      judgement: start.judgement ?? emptyBeadContent.judgement,
      welderId: start.welderId ?? null,
      jobId: start.jobId ?? null,
      weldId: start.weldId ?? null,
      ...(start.createdAt ? { createdAt: start.createdAt } : {}),
      ...(start.previousId ? { previousId: start.previousId } : {}),
    },
    include: withPhotos,
  });
  await keepFacts(tx, row.id);
  await log(`bead:${row.id}`, "bead.made", { number });
  return ok(toRecord(row));
}

async function isTaken(tx: Tx, id: string): Promise<boolean> {
  const [there, deleted] = [{ where: { id }, select: { id: true } }, { where: { beadId: id } }];
  return (await tx.bead.findUnique(there)) !== null || (await tx.deletedBead.count(deleted)) > 0;
}

/**
 * Writes everything a person edits about a bead, whole or not at all.
 * `basedOn` is the revision they saw; if the store holds a newer one nothing is written and the answer says so.
 */
export async function saveBead(
  pen: Pen,
  id: string,
  basedOn: number,
  input: unknown,
): Promise<Result<{ readonly revision: number }, RecordIssue>> {
  const parsed = BeadContentSchema.safeParse(input);
  if (!parsed.success) {
    const first = parsed.error.issues[0];
    const path = (first?.path ?? []).map((part) => (typeof part === "number" ? part : String(part)));
    return fail(issue("bead-not-understood", path, { reason: first?.message ?? "unknown" }));
  }
  const points = countBeadPoints(parsed.data);
  if (points > MOST_POINTS) return fail(issue("bead-too-many-points", [], { points, most: MOST_POINTS }));
  return writing(pen, async (tx, log) => {
    const before = await readOwn(tx, id);
    if (before === "unreadable") return fail(issue("bead-unreadable"));
    // Sent again because the answer got lost, or with nothing changed: it is saved, and the log holds changes only.
    if (before && before.revision >= basedOn && isAsStored(before.content, parsed.data))
      return ok({ revision: before.revision });
    const saved = await writeBead(tx, id, basedOn, parsed.data);
    if (saved.ok && before) {
      const changed = changedParts(before.content, parsed.data);
      await writePhotos(tx, id, before.content.photos, parsed.data.photos);
      await keepFacts(tx, id);
      await log(`bead:${id}`, "bead.saved", { revision: saved.value.revision, changed });
    }
    return saved;
  });
}

/** Whether writing this would change nothing. Photos that the bead does not carry are not written. */
function isAsStored(stored: BeadContent, sent: BeadContent): boolean {
  const known = new Set(stored.photos.map(({ id }) => id));
  const photos = sent.photos.filter(({ id }) => known.has(id));
  const order = stored.photos.filter(({ id }) => photos.some((photo) => photo.id === id));
  return (
    photos.every(({ id }, i) => order[i]?.id === id) &&
    changedParts(stored, { ...sent, welder: sent.welder || null, photos }).length === 0
  );
}

async function writeBead(
  tx: Tx,
  id: string,
  basedOn: number,
  content: BeadContent,
): Promise<Result<{ readonly revision: number }, RecordIssue>> {
  const { title, welder, setup, judgement } = content;
  const data = { title, welder: welder || null, setup, judgement, revision: basedOn + 1 };
  // The revision is part of the condition, so that two saves racing each other cannot both win.
  const { count } = await tx.bead.updateMany({ where: { id, revision: basedOn }, data });
  if (count === 0) {
    const there = await tx.bead.findUnique({ where: { id }, select: { revision: true } });
    return fail(
      there ? issue("bead-changed-elsewhere", [], { revision: there.revision }) : issue("bead-gone"),
    );
  }
  return ok({ revision: basedOn + 1 });
}

type Photos = BeadContent["photos"];

/**
 * Writes the photos that differ from what is stored: each is a question to the database while writers wait. Where they are
 * no longer the same ones in the same order all are written, with their places.
 */
async function writePhotos(tx: Tx, beadId: string, stored: Photos, sent: Photos): Promise<void> {
  const inPlace = sent.length === stored.length && sent.every(({ id }, i) => id === stored[i]?.id);
  for (const [place, photo] of sent.entries()) {
    if (inPlace && canonicalJson(photo) === canonicalJson(stored[place])) continue;
    await tx.photo.updateMany({
      where: { id: photo.id, beadId },
      data: { role: photo.role, drawing: photoColumn(photo), ...(inPlace ? {} : { place }) },
    });
  }
}

export interface NewPhoto {
  readonly sha256: string;
  readonly format: string;
  readonly bytes: number;
  readonly widthPx: number;
  readonly heightPx: number;
  /** Seals of its derived pictures (`viewSeals`), for the log. */
  readonly views?: readonly string[];
}

/**
 * Puts a stored photo on a bead. The revision stays: a save from a window that does not know the photo yet leaves it
 * alone, so nothing collides. With an id that the device gave it (`isNewId`), the same photo may come again after an
 * answer was lost: it is there already, and that is the answer.
 */
export async function addPhoto(
  pen: Pen,
  beadId: string,
  { views = [], ...photo }: NewPhoto,
  role: PhotoRole,
  ownId?: string,
): Promise<Result<{ readonly record: PhotoRecord; readonly alsoOn: readonly number[] }, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const bead = await tx.bead.findUnique({
      where: { id: beadId },
      include: { photos: { select: { id: true, place: true, sha256: true, role: true } } },
    });
    if (!bead) return fail(issue("bead-gone"));
    const same = bead.photos.find((other) => other.sha256 === photo.sha256);
    if (same && same.id === ownId)
      return ok({ record: { id: same.id, role: roleOf(same), ...photo }, alsoOn: [] });
    if (same) return fail(issue("photo-already-on-bead"));
    if (ownId !== undefined && (await tx.photo.count({ where: { id: ownId } })) > 0)
      return fail(issue("photo-id-taken"));
    const elsewhere = await tx.photo.findMany({
      where: { sha256: photo.sha256 },
      select: { bead: { select: { number: true } } },
    });
    const place = Math.max(-1, ...bead.photos.map((other) => other.place)) + 1;
    const id = ownId ?? newId();
    await tx.photo.create({
      data: { id, beadId, role, place, ...photo, drawing: newPhotoContent(id, role).drawing },
    });
    await keepFacts(tx, beadId);
    await log(`bead:${beadId}`, "photo.added", { photo: id, sha256: photo.sha256, views });
    return ok({
      record: { id, role, ...photo },
      alsoOn: elsewhere.map((other) => other.bead.number),
    });
  });
}

/** Takes a photo off a bead. The original's bytes stay in the store: they are evidence. */
export async function removePhoto(
  pen: Pen,
  beadId: string,
  photoId: string,
): Promise<Result<null, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const { count } = await tx.photo.deleteMany({ where: { id: photoId, beadId } });
    if (count === 0) return fail(issue("photo-gone"));
    await keepFacts(tx, beadId);
    await log(`bead:${beadId}`, "photo.removed", { photo: photoId });
    return ok(null);
  });
}
