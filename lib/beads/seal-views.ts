import { z } from "zod";
import { writeTogether, type Db } from "@/lib/db";
import { viewSeals } from "@/lib/photo";
import { readSetting, stateDigest, writeLog, logParts, writeSetting } from "@/lib/store";

const seal = /^([0-9a-f]{64})\/([a-z]+)=([0-9a-f]{64})$/;

/** One derived picture as an entry of the log seals it. */
export interface ViewSeal {
  /** Of the original. */
  readonly sha256: string;
  readonly size: string;
  readonly digest: string;
}

/** The derived pictures that an entry seals. Most seal none, and are not parsed; one that somebody damaged says nothing. */
export function viewSealsIn({ detail }: { readonly detail: string }): readonly ViewSeal[] {
  if (!detail.includes('"views"')) return [];
  try {
    const { views } = JSON.parse(detail) as { views?: unknown };
    return (Array.isArray(views) ? views : []).flatMap((text) => {
      const [, sha256, size, digest] = seal.exec(String(text)) ?? [];
      return sha256 && size && digest ? [{ sha256, size, digest }] : [];
    });
  } catch {
    return [];
  }
}

/** Setting: every photo of before has its pictures in the log; a photo that came since brought them itself. */
const SEALED = "photos.sealed";

/**
 * Enters the pictures of photos that the log does not know yet, as those of an earlier version; once, because whatever takes
 * a photo in seals them since. Says of how many.
 */
export async function sealViews(db: Db, dataDir: string): Promise<number> {
  if (await readSetting(db, SEALED, z.boolean())) return 0;
  const open = await unsealed(db);
  let count = 0;
  for (const [sha256, beadId] of open) {
    const views = await viewSeals(dataDir, sha256);
    if (views.length > 0) count += await enter(db, { sha256, views, subject: `bead:${beadId}` });
  }
  await writeSetting({ db, by: "system" }, SEALED, true);
  return count;
}

/** Photos of which the log knows no picture, with a bead that carries them. */
async function unsealed(db: Db): Promise<ReadonlyMap<string, string>> {
  const photos = await db.photo.findMany({ select: { sha256: true, beadId: true }, orderBy: { id: "desc" } });
  const open = new Map(photos.map(({ sha256, beadId }) => [sha256, beadId]));
  for await (const part of logParts(db))
    for (const entry of part)
      for (const { sha256, size } of viewSealsIn(entry)) if (size === "view") open.delete(sha256);
  return open;
}

async function enter(
  db: Db,
  { sha256, views, subject }: { sha256: string; views: readonly string[]; subject: string },
): Promise<number> {
  return writeTogether(db, async (tx) => {
    // An entry seals the bead as it is now, so one that was changed behind the program's back must not get any.
    const last = await tx.logEntry.findFirst({ where: { subject }, orderBy: { seq: "desc" } });
    if (last?.digest !== (await stateDigest(tx, subject))) return 0;
    await writeLog(tx, { by: "system", subject, action: "photo.sealed", detail: { sha256, views } });
    return 1;
  });
}
