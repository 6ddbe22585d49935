import type { Db } from "@/lib/db";
import { photosNamed } from "@/lib/inspect";

/**
 * Every photo that something names: beads, deleted beads that can be brought back, signed records, and the log. A photo that
 * was taken off its bead stays as evidence; the log knows it.
 */
export async function namedPhotos(db: Db): Promise<ReadonlySet<string>> {
  const named = new Set<string>();
  for (const { sha256 } of await db.photo.findMany({ select: { sha256: true } })) named.add(sha256);
  const texts = [
    ...(await db.deletedBead.findMany({ select: { content: true } })).map(({ content }) => content ?? ""),
    ...(await db.signedRevision.findMany({ select: { content: true } })).map(({ content }) => content),
  ];
  for (const text of texts) for (const sha256 of photosNamed(text)) named.add(sha256);
  const said = await db.logEntry.findMany({
    where: { OR: [{ detail: { contains: '"sha256"' } }, { detail: { contains: '"views"' } }] },
    select: { subject: true, detail: true },
  });
  // Of a bead that was erased for good nothing is evidence any more.
  const erased = await db.deletedBead.findMany({ where: { content: null }, select: { beadId: true } });
  const gone = new Set(erased.map(({ beadId }) => `bead:${beadId}`));
  for (const { subject, detail } of said)
    if (!gone.has(subject)) for (const [sha256] of detail.matchAll(/\b[0-9a-f]{64}\b/g)) named.add(sha256);
  return named;
}
