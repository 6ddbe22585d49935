import { createHash } from "node:crypto";
import { crc32 } from "node:zlib";
import type { ShopCriteria } from "@/lib/accept";
import { fail, invariant, issue, ok, type Issue, type Result } from "@/lib/base";
import type { BeadRecord } from "@/lib/beads";
import {
  archiveManifest,
  archivePhotoName,
  digestLine,
  ExchangeBeadSchema,
  MANIFEST_DIGEST_NAME,
  MANIFEST_NAME,
  noJobs,
  noSeries,
  serialiseManifest,
  storedZip,
  type ExchangeBead,
  type JobsAlong,
  type SeriesAlong,
  type ZipEntry,
} from "@/lib/exchange";
import { photoStore } from "@/lib/photo";
import { tablesDigest } from "@/lib/shop";

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

/** As much as one archive of this format may be to be read back in on a small machine: own estimate. */
export const MOST_ARCHIVE_BYTES = 2 ** 30;
export const MOST_ARCHIVE_BEADS = 2000;

/** An archive ready to be sent: its length, and its bytes whenever they are asked for. */
export interface Archive {
  readonly bytes: number;
  /** Throws where an original is no longer what it was when the archive was made up: what has gone out is incomplete then. */
  parts(): AsyncGenerator<Uint8Array>;
}

interface FileEntry extends ZipEntry {
  readonly sha256: string;
  /** Held in memory (the manifest), or read from the store. */
  readonly held: Uint8Array | null;
}

/**
 * Beads and their originals as one ZIP, oldest number first, with those of `shopSets` they name and the jobs that go
 * along (their beads must be among `beads`), and the trials and cards. Each original is hashed first: one that is not what it was is refused, never
 * packed. No more than a piece of one photo is in memory at a time. `place`: where the photos are (`photoStore`).
 */
export async function archiveOf(
  place: string,
  beads: readonly BeadRecord[],
  shopSets: readonly ShopCriteria[],
  along: JobsAlong = noJobs,
  series: SeriesAlong = noSeries,
): Promise<Result<Archive, ArchiveRefusal>> {
  if (beads.length + along.jobs.length + series.trials.length + series.cards.length === 0)
    return fail(issue("archive-empty"));
  const sorted = exchangeBeads(beads.toSorted((a, b) => a.number - b.number));
  const carried = [
    ...sorted.flatMap(({ number, photos }) => photos.map((photo) => ({ number, ...photo }))),
    ...along.jobs.flatMap(({ evidence }) =>
      evidence.map((photo) => ({ number: "of a signed record", ...photo })),
    ),
  ];
  const bytes = carried.reduce((sum, photo) => sum + photo.bytes, 0);
  if (sorted.length > MOST_ARCHIVE_BEADS || bytes > MOST_ARCHIVE_BYTES) return tooMany(sorted.length, bytes);
  const files = new Map<string, FileEntry>();
  for (const { number, ...photo } of carried) {
    const name = archivePhotoName(photo);
    if (files.has(name)) continue;
    const checked = await checkedFile(place, photo.sha256);
    if (checked === null || checked.sha256 !== photo.sha256 || checked.bytes !== photo.bytes)
      return fail(issue("archive-photo", [], { number, sha256: photo.sha256 }));
    files.set(name, { name, held: null, ...checked });
  }
  const manifest = Buffer.from(
    serialiseManifest(archiveManifest(sorted, tablesDigest(), shopSets, along, series)),
  );
  const line = Buffer.from(digestLine(sha256Bytes(manifest)));
  return ok(
    streamed(place, [
      heldEntry(MANIFEST_NAME, manifest),
      heldEntry(MANIFEST_DIGEST_NAME, line),
      ...files.values(),
    ]),
  );
}

/** Refused before a bead is read where so many are asked for. */
export function tooMany(beads: number, bytes: number): Result<never, ArchiveRefusal> {
  const limits = { most: MOST_ARCHIVE_BEADS, mostBytes: MOST_ARCHIVE_BYTES };
  return fail(issue("archive-too-many", [], { beads, bytes, ...limits }));
}

const heldEntry = (name: string, held: Uint8Array): FileEntry => ({
  name,
  held,
  bytes: held.length,
  crc32: crc32(held),
  sha256: sha256Bytes(held),
});

/** A file read once, piece by piece; null where it cannot be. */
async function checkedFile(
  place: string,
  sha256: string,
): Promise<Pick<FileEntry, "bytes" | "crc32" | "sha256"> | null> {
  const hash = createHash("sha256");
  let [bytes, crc] = [0, 0];
  try {
    const file = await photoStore(place).open(sha256, "original");
    if (file === null) return null;
    for await (const piece of file.body) {
      hash.update(piece);
      crc = crc32(piece, crc);
      bytes += piece.length;
    }
  } catch {
    return null;
  }
  return { bytes, crc32: crc, sha256: hash.digest("hex") };
}

function streamed(place: string, entries: readonly FileEntry[]): Archive {
  const { bytes, parts } = storedZip(entries);
  return {
    bytes,
    async *parts() {
      for (const part of parts) {
        if ("bytes" in part) yield part.bytes;
        else if (part.entry.held) yield part.entry.held;
        else yield* unaltered(place, part.entry.sha256);
      }
    },
  };
}

/** The bytes of an original; its last piece is held back until all of them are known to be what they were. */
async function* unaltered(place: string, sha256: string): AsyncGenerator<Uint8Array> {
  const file = await photoStore(place).open(sha256, "original");
  invariant(file !== null, `original ${sha256} is gone`);
  const hash = createHash("sha256");
  let waiting: Uint8Array | null = null;
  for await (const piece of file.body) {
    if (waiting) yield waiting;
    hash.update(piece);
    waiting = piece;
  }
  invariant(hash.digest("hex") === sha256, `original ${sha256} was altered`);
  if (waiting) yield waiting;
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
