import type { KeyPort } from "@/lib/signature";
import type { ArchiveManifest } from "./archive-manifest";
import { archiveKeyLines, archiveSignatureLine, archiveVerdictLine } from "./archive-signature-words";
import { archiveSignatures } from "./archive-signatures";
import { exchangeSentence } from "./sentences";
import { unpackArchive } from "./unpack-archive";

/** What an archive shows by itself. `state`: every signature fits, one does not, or it could not be read. */
export interface ArchiveReport {
  readonly state: "fits" | "does-not-fit" | "unreadable";
  readonly lines: readonly string[];
}

/**
 * Verifies an archive by itself, in lines for people: which key signed what in it, and when. Nothing but its bytes is
 * asked. `sha256`: of bytes or of a UTF-8 text, hexadecimal.
 */
export function archiveReport(
  bytes: Uint8Array,
  port: KeyPort,
  sha256: (of: Uint8Array | string) => string,
): ArchiveReport {
  const archive = unpackArchive(bytes, sha256);
  if (!archive.ok) return { state: "unreadable", lines: archive.issues.map(exchangeSentence) };
  const { manifest, files } = archive.value;
  const found = archiveSignatures(manifest, port, sha256);
  return {
    state: found.every(({ verdict }) => verdict.fits) ? "fits" : "does-not-fit",
    lines: [
      `${counted(manifest.beads.length, "bead")} and ${counted(files.size, "photo")}: every photo has the checksum that the list states.`,
      ...seriesLine(manifest),
      ...found.map(archiveSignatureLine),
      ...archiveKeyLines(found),
      archiveVerdictLine(found),
    ],
  };
}

/** Trials and cards along, where there are any. */
function seriesLine({ trials = [], cards = [] }: ArchiveManifest): readonly string[] {
  if (trials.length + cards.length === 0) return [];
  return [`${counted(trials.length, "trial")} and ${counted(cards.length, "procedure card")} come along.`];
}

const counted = (count: number, one: string): string => `${count} ${count === 1 ? one : `${one}s`}`;
