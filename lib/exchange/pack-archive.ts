import { strToU8, zipSync } from "fflate";
import { invariant } from "@/lib/base";
import { serialiseManifest, type ArchiveManifest } from "./archive-manifest";

export const MANIFEST_NAME = "manifest.json";
export const MANIFEST_DIGEST_NAME = "manifest.json.sha256";

/** Lower-case hexadecimal SHA-256 of bytes: whoever calls brings it, because every platform has its own. */
export type Sha256 = (bytes: Uint8Array) => string;

/** ZIP keeps local time without a zone: a text without one is the same everywhere. Noon exists in every zone. */
const FIXED_TIME = "1980-01-01T12:00:00";

/** The digest in the form `sha256sum -c` reads. */
export const digestLine = (digest: string): string => `${digest}  ${MANIFEST_NAME}\n`;

/**
 * Beads and photos as one ZIP. `files` holds the photos by the manifest's names. The same content always gives the
 * same bytes: names sorted, times fixed, nothing compressed (photos are already, and a compressor's next version
 * would change the bytes). Missing, surplus or altered files are our own mistake and thrown.
 *
 * @twice
 */
export function packArchive(
  manifest: ArchiveManifest,
  files: ReadonlyMap<string, Uint8Array>,
  sha256: Sha256,
): Uint8Array {
  invariant(files.size === manifest.photos.length, "an archive holds the manifest's photos and no others");
  const text = strToU8(serialiseManifest(manifest));
  const parts: [string, Uint8Array][] = [
    [MANIFEST_NAME, text],
    [MANIFEST_DIGEST_NAME, strToU8(digestLine(sha256(text)))],
  ];
  for (const photo of manifest.photos) {
    const bytes = files.get(photo.name);
    invariant(bytes !== undefined, `photo ${photo.name} is missing`);
    invariant(bytes.length === photo.bytes && sha256(bytes) === photo.sha256, `photo ${photo.name} differs`);
    parts.push([photo.name, bytes]);
  }
  parts.sort(([a], [b]) => (a < b ? -1 : 1));
  return zipSync(Object.fromEntries(parts), { level: 0, mtime: FIXED_TIME });
}
