import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import type { ShopCriteria } from "@/lib/accept";
import { fail, issue, ok, type Issue, type Result } from "@/lib/base";
import type { BeadRecord } from "@/lib/beads";
import {
  archiveManifest,
  archivePhotoName,
  ExchangeBeadSchema,
  noJobs,
  packArchive,
  type ExchangeBead,
  type JobsAlong,
} from "@/lib/exchange";
import { originalPath, verifyOriginal } from "@/lib/photo";
import { tablesDigest } from "./tables-digest";

export const sha256Bytes = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

/**
 * Beads as they travel: what belongs to the bead, not the person, job or hand-in of this shop. A pointer to the bead
 * before is kept only where that one travels too, so that what arrives is exactly what left.
 */
export function exchangeBeads(beads: readonly BeadRecord[]): readonly ExchangeBead[] {
  const along = new Set(beads.map(({ id }) => id));
  return beads.map((bead) =>
    ExchangeBeadSchema.parse({
      ...bead,
      previous: bead.previous && along.has(bead.previous.id) ? bead.previous : null,
    }),
  );
}

/**
 * - `archive-empty`: no bead to pack.
 * - `archive-too-many`: `data.beads` of at most `data.most`, or `data.bytes` of at most `data.mostBytes`.
 * - `archive-photo`: the original of a photo of bead `data.number` is missing or altered (`data.sha256`).
 */
export type ArchiveRefusal = Issue<"archive-empty" | "archive-too-many" | "archive-photo">;

/** One archive is held in memory while it is packed: own estimate of what a small shop server can spare. */
export const MOST_ARCHIVE_BYTES = 2 ** 30;
const MOST_BEADS = 2000;

/**
 * Beads and their originals as one ZIP, oldest number first, with those of `shopSets` they name and the jobs that go
 * along (their beads must be among `beads`). Each original is hashed again on the way: one that is not what it was is
 * refused, never packed.
 */
export async function archiveOf(
  dataDir: string,
  beads: readonly BeadRecord[],
  shopSets: readonly ShopCriteria[],
  along: JobsAlong = noJobs,
): Promise<Result<Uint8Array, ArchiveRefusal>> {
  if (beads.length === 0 && along.jobs.length === 0) return fail(issue("archive-empty"));
  const sorted = exchangeBeads(beads.toSorted((a, b) => a.number - b.number));
  const carried = [
    ...sorted.flatMap(({ number, photos }) => photos.map((photo) => ({ number, ...photo }))),
    ...along.jobs.flatMap(({ evidence }) =>
      evidence.map((photo) => ({ number: "of a signed record", ...photo })),
    ),
  ];
  const bytes = carried.reduce((sum, photo) => sum + photo.bytes, 0);
  if (sorted.length > MOST_BEADS || bytes > MOST_ARCHIVE_BYTES)
    return fail(
      issue("archive-too-many", [], {
        beads: sorted.length,
        most: MOST_BEADS,
        bytes,
        mostBytes: MOST_ARCHIVE_BYTES,
      }),
    );
  const files = new Map<string, Uint8Array>();
  for (const { number, ...photo } of carried) {
    const file = originalPath(dataDir, photo.sha256);
    const sound = await verifyOriginal(dataDir, photo.sha256);
    const original = file !== null && sound.ok ? await readFile(file) : null;
    if (original === null || original.length !== photo.bytes)
      return fail(issue("archive-photo", [], { number, sha256: photo.sha256 }));
    files.set(archivePhotoName(photo), original);
  }
  return ok(packArchive(archiveManifest(sorted, tablesDigest(), shopSets, along), files, sha256Bytes));
}

export function archiveSentence({ code, data }: ArchiveRefusal): string {
  switch (code) {
    case "archive-empty":
      return "No bead fits, so there is nothing to pack. Widen the filter.";
    case "archive-too-many":
      return `This would pack ${data["beads"]} beads with ${Math.round(Number(data["bytes"]) / 2 ** 20)} MB of photos; at most ${data["most"]} beads and ${Math.round(Number(data["mostBytes"]) / 2 ** 20)} MB fit one archive. Narrow the filter, a month at a time.`;
    case "archive-photo":
      return `A photo of bead ${data["number"]} is missing from the store or was altered, so no archive was made. Run the check of the records (npm run -s verify).`;
  }
}
