import { readFileSync } from "node:fs";
import { fingerprint } from "@/lib/signature";
import { proofSentence, readProof } from "@/lib/verify";

/** What an entry's detail says under a name; null: nothing that can be read. */
function said(detail: string, name: string): string | null {
  const value = (JSON.parse(detail) as Record<string, unknown>)[name];
  return typeof value === "string" || typeof value === "number" ? String(value) : null;
}

/** Verifies a proof by itself: no data folder, nothing written. Says the lines and the exit code: 0 it holds, 1 it does not. */
export function verifyProof(file: string): { readonly lines: readonly string[]; readonly code: 0 | 1 } {
  const read = readProof(readFileSync(file, "utf8"));
  if (!read.ok) return { lines: read.issues.map(proofSentence), code: 1 };
  const { entry, checkpoint, grownFrom } = read.value;
  const { size, root, key, signature } = checkpoint;
  const digest = said(entry.detail, "digest");
  return {
    lines: [
      `Entry ${entry.seq} of ${entry.at}: ${entry.action}, ${entry.subject}, revision ${said(entry.detail, "revision") ?? "unknown"}.`,
      ...(digest === null
        ? []
        : [`SHA-256 of the signed text: ${digest}. Compare it with the foot of the report.`]),
      `It is in the log of ${size} entries whose root is ${root}.`,
      `Signed on ${signature.at.slice(0, 16).replace("T", " ")} UTC by key ${fingerprint(key.id)}, SHA-256 ${key.id}.`,
      ...(grownFrom
        ? [`That log begins with the ${grownFrom.size} entries whose root is ${grownFrom.root}.`]
        : []),
      "The proof holds. Whose the key is, it cannot say: compare the fingerprint with the installation's.",
    ],
    code: 0,
  };
}
