import { z } from "zod";
import { canonicalJson, fail, issue, ok, type Result } from "@/lib/base";
import { ExchangeBeadSchema, Sha256Schema, type ExchangeBead, type ExchangePhoto } from "./bead-file";

import type { ExchangeIssue } from "./issue";
import { beadIssues, readVersioned, repeated } from "./read-versioned";

/** Bump when the archive's shape changes; a reader refuses what is newer than itself. */
export const ARCHIVE_VERSION = 1;

export const ArchiveManifestSchema = z.object({
  schemaVersion: z.literal(ARCHIVE_VERSION),
  beads: z.array(ExchangeBeadSchema).max(2000).readonly(),
  /** Every photo of every bead once, sorted by name. */
  photos: z
    .array(z.object({ name: z.string(), sha256: Sha256Schema, bytes: z.int().nonnegative() }))
    .readonly(),
  /** SHA-256 of the knowledge tables the beads were judged with, so that an old verdict can be traced. */
  tablesDigest: Sha256Schema,
});
export type ArchiveManifest = z.infer<typeof ArchiveManifestSchema>;

/** Where a photo lies in an archive. */
export function archivePhotoName({ sha256, format }: ExchangePhoto): string {
  return `photos/${sha256}.${format}`;
}

/** The manifest of these beads, in the order given. The photo list follows from them. */
export function archiveManifest(beads: readonly ExchangeBead[], tablesDigest: string): ArchiveManifest {
  const photos = beads.flatMap((bead) =>
    bead.photos.map((photo) => ({
      name: archivePhotoName(photo),
      sha256: photo.sha256,
      bytes: photo.bytes,
    })),
  );
  const byName = new Map(photos.map((photo) => [photo.name, photo]));
  return {
    schemaVersion: ARCHIVE_VERSION,
    beads,
    photos: [...byName.values()].sort((a, b) => (a.name < b.name ? -1 : 1)),
    tablesDigest,
  };
}

/** The manifest as text: the same content always gives the same text. Throws on one that does not fit its schema. */
export function serialiseManifest(manifest: ArchiveManifest): string {
  return canonicalJson(ArchiveManifestSchema.parse(manifest));
}

/** Issues: `not-json`, `version-missing`, `version-newer`, `malformed`, `id-twice`, `photo-unlisted`. */
export function parseManifest(text: string): Result<ArchiveManifest, ExchangeIssue> {
  const read = readVersioned(text, ArchiveManifestSchema, ARCHIVE_VERSION);
  if (!read.ok) return read;
  const { beads, tablesDigest, photos } = read.value;
  const wrong = [
    ...repeated(beads, ["beads"]),
    ...beads.flatMap((bead, i) => beadIssues(bead, ["beads", i])),
  ];
  if (wrong.length > 0) return fail<ExchangeIssue>(...wrong);
  // The list says nothing the beads do not say; where they differ, one of them was changed.
  return canonicalJson(archiveManifest(beads, tablesDigest).photos) === canonicalJson(photos)
    ? ok(read.value)
    : fail(issue("malformed", ["photos"], { problem: "photo-list-differs" }));
}
