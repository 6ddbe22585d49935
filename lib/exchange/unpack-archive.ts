import { strFromU8 } from "fflate";
import { fail, issue, ok, type Result } from "@/lib/base";
import { parseManifest, type ArchiveManifest } from "./archive-manifest";
import type { ExchangeIssue } from "./issue";
import { digestLine, MANIFEST_DIGEST_NAME, MANIFEST_NAME, type Sha256 } from "./pack-archive";
import { unpackEntry } from "./unpack-entry";
import { zipDirectory, type ZipEntry } from "./zip-directory";

export interface ArchiveLimits {
  readonly mostFiles: number;
  /** Of any one file, unpacked. */
  readonly mostFileBytes: number;
  /** Of all files together, unpacked. */
  readonly mostBytes: number;
}

/** Own estimate: 2000 beads of a few photos, the largest a phone takes, and memory to hold them. */
export const usualArchiveLimits: ArchiveLimits = {
  mostFiles: 10_000,
  mostFileBytes: 100 * 2 ** 20,
  mostBytes: 1.5 * 2 ** 30,
};

export interface UnpackedArchive {
  readonly manifest: ArchiveManifest;
  /** The photos by the manifest's names, each with the checksum it states. */
  readonly files: ReadonlyMap<string, Uint8Array>;
}

type Listing = ReadonlyMap<string, ZipEntry>;

/**
 * An archive back into beads and photos, or every reason why not; nothing is written anywhere. Issues: all
 * `archive-*` and those of the manifest.
 */
export function unpackArchive(
  bytes: Uint8Array,
  sha256: Sha256,
  limits: ArchiveLimits = usualArchiveLimits,
): Result<UnpackedArchive, ExchangeIssue> {
  const steps = unpackSteps(bytes, sha256, limits);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** As `unpackArchive`, file by file: between two of them whoever unpacks may let others have their turn. */
export function* unpackSteps(
  bytes: Uint8Array,
  sha256: Sha256,
  limits: ArchiveLimits = usualArchiveLimits,
): Generator<void, Result<UnpackedArchive, ExchangeIssue>> {
  const entries = zipDirectory(bytes);
  if (!entries.ok) return entries;
  const listing = listFiles(entries.value, limits);
  if (!listing.ok) return listing;
  // The version comes first: a later one may hold files this one does not know.
  const manifest = readManifest(listing.value, sha256, limits);
  if (!manifest.ok) return manifest;
  const names = checkNames(listing.value, manifest.value);
  if (names.length > 0) return fail<ExchangeIssue>(...names);
  const files = new Map<string, Uint8Array>();
  for (const photo of manifest.value.photos) {
    yield;
    const file = unpackNamed(listing.value, photo.name, limits);
    if (!file.ok) return file;
    if (file.value.length !== photo.bytes || sha256(file.value) !== photo.sha256)
      return fail(issue("archive-checksum", [], { name: photo.name }));
    files.set(photo.name, file.value);
  }
  return ok({ manifest: manifest.value, files });
}

/** Names and declared sizes, before a single byte is unpacked. Empty folders, which some packers add, are passed over. */
function listFiles(
  entries: readonly ZipEntry[],
  { mostFiles, mostBytes, mostFileBytes }: ArchiveLimits,
): Result<Listing, ExchangeIssue> {
  const files = entries.filter(({ name, bytes }) => isUnsafe(name) || bytes > 0 || !name.endsWith("/"));
  const unsafe = files.filter(({ name }) => isUnsafe(name));
  if (unsafe.length > 0)
    return fail<ExchangeIssue>(
      ...unsafe.map(({ name }) => issue("archive-name-unsafe" as const, [], { name })),
    );
  const listing = new Map(files.map((entry) => [entry.name, entry]));
  const twice = files.find((entry) => listing.get(entry.name) !== entry);
  if (twice) return fail(issue("archive-name-twice", [], { name: twice.name }));
  if (files.length > mostFiles)
    return fail(issue("archive-too-large", [], { name: "files", bytes: files.length, most: mostFiles }));
  const large = files.find(({ bytes }) => bytes > mostFileBytes);
  if (large)
    return fail(
      issue("archive-too-large", [], { name: large.name, bytes: large.bytes, most: mostFileBytes }),
    );
  const total = files.reduce((sum, { bytes }) => sum + bytes, 0);
  return total > mostBytes
    ? fail(issue("archive-too-large", [], { name: "archive", bytes: total, most: mostBytes }))
    : ok(listing);
}

/** Leads out of the archive, means something else on another system, or cannot be shown as it is. */
function isUnsafe(name: string): boolean {
  return (
    name === "" ||
    name.startsWith("/") ||
    /[^\x20-\x7e]|[\\:*?"<>|]/.test(name) ||
    name.split("/").some((part) => part === ".." || part === ".")
  );
}

function unpackNamed(
  listing: Listing,
  name: string,
  { mostFileBytes }: ArchiveLimits,
): Result<Uint8Array, ExchangeIssue> {
  const entry = listing.get(name);
  return entry ? unpackEntry(entry, mostFileBytes) : fail(issue("archive-file-missing", [], { name }));
}

function readManifest(
  listing: Listing,
  sha256: Sha256,
  limits: ArchiveLimits,
): Result<ArchiveManifest, ExchangeIssue> {
  const text = unpackNamed(listing, MANIFEST_NAME, limits);
  if (!text.ok) return text;
  const digest = unpackNamed(listing, MANIFEST_DIGEST_NAME, limits);
  if (!digest.ok) return digest;
  if (strFromU8(digest.value) !== digestLine(sha256(text.value)))
    return fail(issue("archive-checksum", [], { name: MANIFEST_NAME }));
  return parseManifest(strFromU8(text.value));
}

function checkNames(listing: Listing, manifest: ArchiveManifest): readonly ExchangeIssue[] {
  const listed = new Set([MANIFEST_NAME, MANIFEST_DIGEST_NAME, ...manifest.photos.map(({ name }) => name)]);
  return [
    ...[...listed].flatMap((name) =>
      listing.has(name) ? [] : [issue("archive-file-missing" as const, [], { name })],
    ),
    ...[...listing.keys()].flatMap((name) =>
      listed.has(name) ? [] : [issue("archive-file-unlisted" as const, [], { name })],
    ),
  ];
}
