import type { Db } from "@/lib/db";
import { viewSeals } from "@/lib/photo";
import { stateDigest, writeLog, allEntries } from "@/lib/store";

const seal = /^([0-9a-f]{64}\/[a-z]+)=([0-9a-f]{64})$/;

/** What the log last said of each derived picture: "PHOTO/view" -> SHA-256 of its bytes. */
export function sealedViews(entries: readonly { readonly detail: string }[]): ReadonlyMap<string, string> {
  const sealed = new Map<string, string>();
  for (const { detail } of entries) {
    for (const text of viewsIn(detail)) {
      const [, picture, digest] = seal.exec(text) ?? [];
      if (picture && digest) sealed.set(picture, digest);
    }
  }
  return sealed;
}

/** Entries without pictures are most of a log, so they are not parsed; one that somebody damaged says nothing. */
function viewsIn(detail: string): readonly string[] {
  if (!detail.includes('"views"')) return [];
  try {
    const { views } = JSON.parse(detail) as { views?: unknown };
    return Array.isArray(views) ? views.map(String) : [];
  } catch {
    return [];
  }
}

/** Enters the pictures of photos that the log does not know yet, as those of an earlier version. Says of how many. */
export async function sealViews(db: Db, dataDir: string): Promise<number> {
  const sealed = sealedViews(await allEntries(db));
  const photos = await db.photo.findMany({ select: { sha256: true, beadId: true }, orderBy: { id: "asc" } });
  const open = photos.filter(
    ({ sha256 }, i) =>
      !sealed.has(`${sha256}/view`) && photos.findIndex((one) => one.sha256 === sha256) === i,
  );
  let count = 0;
  for (const { sha256, beadId } of open) {
    const views = await viewSeals(dataDir, sha256);
    if (views.length === 0) continue;
    const subject = `bead:${beadId}`;
    count += await db.$transaction(async (tx) => {
      // An entry seals the bead as it is now, so one that was changed behind the program's back must not get any.
      const last = await tx.logEntry.findFirst({ where: { subject }, orderBy: { seq: "desc" } });
      if (last?.digest !== (await stateDigest(tx, subject))) return 0;
      await writeLog(tx, { by: "system", subject, action: "photo.sealed", detail: { sha256, views } });
      return 1;
    });
  }
  return count;
}
