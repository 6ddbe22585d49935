import { issue } from "@/lib/base";
import { viewSealsIn } from "@/lib/beads";
import { dialect, rowsOf, sql, type Db } from "@/lib/db";
import { photosNamed } from "@/lib/inspect";
import type { ContentIssue } from "@/lib/ledger";
import { verifyOriginal, viewDigests, type PhotoSize } from "@/lib/photo";
import type { WalkedLog } from "./log-walk";
import { counter, type Walk } from "./walk";

const SLICE = 50;

/**
 * Hashes originals again, and the pictures made from them that the log sealed; after a part of the log those alone that it
 * sealed. `place`: where the photos are. Answers with how many it looked at.
 */
export async function* checkPhotos(
  db: Db,
  place: string,
  { seals, touched }: Pick<WalkedLog, "seals" | "touched">,
): Walk<number> {
  const count = counter("photos", touched === null ? await countPhotos(db) : seals.size);
  const photos = touched === null ? everyPhoto(db) : photosOf(db, [...seals.keys()]);
  for await (const { sha256, places } of photos) {
    yield count.step(1, await checkPhoto(db, place, sha256, { places, seals }));
  }
  yield count.end();
  return count.looked();
}

/** Photos of beads, each once; what texts alone name is not among them, and is counted when it is found. */
async function countPhotos(db: Db): Promise<number> {
  const [row] = await rowsOf<{ photos: unknown }>(
    db,
    sql`SELECT COUNT(DISTINCT "sha256") AS "photos" FROM "Photo"`,
  );
  return dialect.numberOut(row?.photos);
}

interface PlacedPhoto {
  readonly sha256: string;
  /** What carries or names it: "bead 12". */
  readonly places: readonly string[];
}

/** Photos of beads, of deleted beads that can still be brought back, and of signed texts: each once, in no order. */
async function* everyPhoto(db: Db): AsyncGenerator<PlacedPhoto> {
  for (let after = ""; ;) {
    const rows = await rowsOf<{ sha256: string }>(
      db,
      sql`SELECT "sha256" FROM "Photo" WHERE "sha256" > ${after} GROUP BY "sha256" ORDER BY "sha256" LIMIT ${SLICE}`,
    );
    const last = rows.at(-1);
    if (!last) break;
    yield* photosOf(
      db,
      rows.map(({ sha256 }) => sha256),
    );
    after = last.sha256;
  }
  yield* photosOfTexts(db);
}

/** These photos with the beads that carry them. Not through the relation: a row that was pointed nowhere must be found. */
async function* photosOf(db: Db, sha256s: readonly string[]): AsyncGenerator<PlacedPhoto> {
  for (let from = 0; from < sha256s.length; from += SLICE) {
    const asked = sha256s.slice(from, from + SLICE);
    const rows = await rowsOf<{ sha256: string; number: unknown }>(
      db,
      sql`SELECT p."sha256", b."number" FROM "Photo" p LEFT JOIN "Bead" b ON b."id" = p."beadId"
        WHERE ${dialect.isOneOf(sql`p."sha256"`, asked)} ORDER BY b."number"`,
    );
    for (const sha256 of asked) {
      const on = rows.filter((row) => row.sha256 === sha256);
      const places = on.map(
        ({ number }) => `bead ${number === null ? "unknown" : dialect.numberOut(number)}`,
      );
      if (places.length > 0) yield { sha256, places };
    }
  }
}

/** What deleted beads and signed texts name and no bead carries any more: it is still what they speak of. */
async function* photosOfTexts(db: Db): AsyncGenerator<PlacedPhoto> {
  const seen = new Set<string>();
  for await (const { place, content } of textsWithPhotos(db))
    for (const sha256 of new Set(photosNamed(content))) {
      if (seen.has(sha256) || (await db.photo.count({ where: { sha256 }, take: 1 })) > 0) continue;
      seen.add(sha256);
      yield { sha256, places: [place] };
    }
}

async function* textsWithPhotos(
  db: Db,
): AsyncGenerator<{ readonly place: string; readonly content: string }> {
  const deleted = await db.deletedBead.findMany({ where: { content: { not: null } }, select: { id: true } });
  for (const { id } of deleted) {
    const row = await db.deletedBead.findUnique({ where: { id } });
    if (row) yield { place: `deleted bead ${row.number}`, content: row.content ?? "" };
  }
  const signed = await db.signedRevision.findMany({ select: { id: true } });
  for (const { id } of signed) {
    const row = await db.signedRevision.findUnique({ where: { id }, select: { content: true } });
    if (row) yield { place: `signed ${id}`, content: row.content };
  }
}

async function checkPhoto(
  db: Db,
  place: string,
  sha256: string,
  { places, seals }: { readonly places: readonly string[]; readonly seals: WalkedLog["seals"] },
): Promise<readonly ContentIssue[]> {
  const where = { sha256, beads: places.join(", ") };
  const findings: ContentIssue[] = [];
  const sealed = await sealedDigests(db, sha256, seals.get(sha256) ?? []);
  if (sealed.size > 0)
    for (const [size, digest] of Object.entries(await viewDigests(place, sha256)) as [
      PhotoSize,
      string | null,
    ][])
      if (sealed.has(size) && sealed.get(size) !== digest)
        findings.push(issue("view-changed", [sha256, size], { ...where, size }));
  const checked = await verifyOriginal(place, sha256);
  if (checked.ok) return findings;
  const code = checked.issues[0]?.code === "photo-missing" ? "photo-missing" : "photo-changed";
  return [...findings, issue(code, [sha256], where)];
}

/** What the log last said of each derived picture of a photo: size -> SHA-256. */
async function sealedDigests(
  db: Db,
  sha256: string,
  seqs: readonly number[],
): Promise<ReadonlyMap<string, string>> {
  const entries = await db.logEntry.findMany({
    where: { seq: { in: [...seqs].slice(-MOST_SEALS) } },
    orderBy: { seq: "asc" },
    select: { detail: true },
  });
  const own = entries.flatMap(viewSealsIn).filter((seal) => seal.sha256 === sha256);
  return new Map(own.map(({ size, digest }) => [size, digest]));
}

/** A photo that lies on thousands of beads was sealed with each; the last of them say it. */
const MOST_SEALS = 200;
