import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { archiveReport } from "@/lib/exchange";
import { nodeKeys } from "@/lib/keys";

const sha256 = (of: Uint8Array | string): string => createHash("sha256").update(of).digest("hex");
const codes = { fits: 0, "does-not-fit": 1, unreadable: 2 } as const;

/**
 * Verifies an archive by itself: no data folder, no account, nothing written. Says the lines and the exit code: 0 every
 * signature fits, 1 one does not, 2 the file could not be read as an archive.
 */
export function verifyArchive(file: string): {
  readonly state: keyof typeof codes;
  readonly lines: readonly string[];
  readonly code: 0 | 1 | 2;
} {
  let bytes: Buffer;
  try {
    bytes = readFileSync(file);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return { state: "unreadable", lines: [`${file} could not be read: ${reason}`], code: 2 };
  }
  const { state, lines } = archiveReport(bytes, nodeKeys, sha256);
  return { state, lines, code: codes[state] };
}
