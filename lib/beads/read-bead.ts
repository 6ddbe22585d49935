import { z } from "zod";
import { BeadJudgementSchema, photoRoles, type PhotoRole } from "@/lib/assess";
import type { Db, Tx } from "@/lib/db";
import { RunSetupSchema } from "@/lib/setup";
import type { BeadRecord, OwnBead, PhotoRecord } from "./bead-record";
import { readPhotoColumn } from "./photo-column";

const ownPhotos = { photos: { orderBy: { place: "asc" } } } as const;
/** What is read along with a bead's row. */
export const withPhotos = {
  ...ownPhotos,
  previous: { select: { id: true, number: true, title: true } },
  handIn: { select: { id: true } },
} as const;
type BeadRow = NonNullable<Awaited<ReturnType<typeof findRow>>>;

export function findRow(db: Db | Tx, id: string) {
  return db.bead.findUnique({ where: { id }, include: withPhotos });
}

/** A role of ours out of what the column holds. */
export const roleOf = (photo: { readonly role: string }): PhotoRole =>
  photoRoles.find((role) => role === photo.role) ?? "face";

export function toRecord(row: BeadRow): BeadRecord {
  const { previousId: _id, ...own } = toOwn(row);
  return { ...own, previous: row.previous, handInId: row.handIn?.id ?? null };
}

/** The one place where a row becomes a domain value; every JSON column is parsed on the way out. */
function toOwn(row: Omit<BeadRow, "previous" | "handIn">): OwnBead {
  const photos = row.photos.map((photo) => ({
    id: photo.id,
    role: roleOf(photo),
    ...readPhotoColumn(photo.drawing),
  }));
  return {
    id: row.id,
    number: row.number,
    revision: row.revision,
    createdAt: row.createdAt.toISOString(),
    updatedAt: row.updatedAt.toISOString(),
    previousId: row.previousId,
    welderId: row.welderId,
    jobId: row.jobId,
    weldId: row.weldId,
    content: {
      title: row.title,
      welder: row.welder,
      setup: RunSetupSchema.parse(row.setup),
      judgement: BeadJudgementSchema.parse(row.judgement),
      photos,
    },
    photos: row.photos.map(({ id, sha256, widthPx, heightPx, format, bytes }, index): PhotoRecord => ({
      id,
      sha256,
      widthPx,
      heightPx,
      format,
      bytes,
      role: photos[index]?.role ?? "face",
    })),
  };
}

/** A bead; null where there is none, and where its row is there and nobody can read it. */
export async function getBead(db: Db | Tx, id: string): Promise<BeadRecord | null> {
  const read = await readBead(db, id);
  return read === "unreadable" ? null : read;
}

/** As `getBead`, told apart. Throws where the store does not answer: then nothing is said of the row. */
export function readBead(db: Db | Tx, id: string): Promise<BeadRecord | "unreadable" | null> {
  return unlessSpoilt(async () => {
    const row = await findRow(db, id);
    return row && toRecord(row);
  });
}

/** As `readBead`, and asks no more than two questions: writers wait for whoever saves. */
export function readOwn(db: Db | Tx, id: string): Promise<OwnBead | "unreadable" | null> {
  return unlessSpoilt(async () => {
    const row = await db.bead.findUnique({ where: { id }, include: ownPhotos });
    return row && toOwn(row);
  });
}

async function unlessSpoilt<T>(read: () => Promise<T>): Promise<T | "unreadable"> {
  try {
    return await read();
  } catch (error) {
    if (!isSpoilt(error)) throw error;
    return "unreadable";
  }
}

/** Whether an error says that what is stored is no bead: no JSON, of another shape, no day, or of another kind of column. */
export function isSpoilt(error: unknown): boolean {
  if (error instanceof z.ZodError || error instanceof SyntaxError || error instanceof RangeError) return true;
  return (error as { code?: unknown } | null)?.code === "P2023";
}

/** One read takes no more beads than this, so that neither memory nor the database's limit of parameters is in question. */
export const MOST_AT_ONCE = 200;

/** Those of these beads that are there, in the order of the ids, at most `MOST_AT_ONCE` of them. */
export async function getBeads(db: Db | Tx, ids: readonly string[]): Promise<readonly BeadRecord[]> {
  if (ids.length > MOST_AT_ONCE) throw new Error(`${ids.length} beads in one read`);
  try {
    const rows = await db.bead.findMany({ where: { id: { in: [...ids] } }, include: withPhotos });
    const byId = new Map(rows.map((row) => [row.id, toRecord(row)]));
    return ids.flatMap((id) => byId.get(id) ?? []);
  } catch (error) {
    if (!isSpoilt(error)) throw error;
  }
  // One of them nobody can read: the others one by one.
  const beads: BeadRecord[] = [];
  for (const id of ids) {
    const bead = await getBead(db, id);
    if (bead) beads.push(bead);
  }
  return beads;
}
