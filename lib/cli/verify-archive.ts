import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import {
  archiveKeyLines,
  archiveSignatureLine,
  archiveSignatures,
  archiveVerdictLine,
  exchangeSentence,
  unpackArchive,
} from "@/lib/exchange";
import { nodeKeys } from "@/lib/keys";

const sha256 = (bytes: Uint8Array | string): string => createHash("sha256").update(bytes).digest("hex");

/**
 * Verifies an archive by itself: no data folder, no account, nothing written. Says the lines and the exit code: 0 every
 * signature fits, 1 one does not, 2 the file could not be read as an archive.
 */
export function verifyArchive(file: string): { readonly lines: readonly string[]; readonly code: 0 | 1 | 2 } {
  let bytes: Buffer;
  try {
    bytes = readFileSync(file);
  } catch (error) {
    return {
      lines: [`${file} could not be read: ${error instanceof Error ? error.message : String(error)}`],
      code: 2,
    };
  }
  const archive = unpackArchive(bytes, sha256);
  if (!archive.ok) return { lines: archive.issues.map(exchangeSentence), code: 2 };
  const { manifest, files } = archive.value;
  const found = archiveSignatures(manifest, nodeKeys, sha256);
  return {
    lines: [
      `${manifest.beads.length} beads and ${files.size} photos: each photo has the checksum the list states.`,
      ...found.map(archiveSignatureLine),
      ...archiveKeyLines(found),
      archiveVerdictLine(found),
    ],
    code: found.every(({ verdict }) => verdict.fits) ? 0 : 1,
  };
}
