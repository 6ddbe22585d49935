import { resultNames } from "@/lib/inspect";
import { faultWords, fingerprint, keyReason } from "@/lib/signature";
import type { ArchivedSignature } from "./archive-signatures";

const day = (at: string): string => `${at.slice(0, 10)} ${at.slice(11, 16)} UTC`;

/** One line for a signed revision: which key, when, of what; or why nothing speaks for it. */
export function archiveSignatureLine({ inspection, revision, record, verdict }: ArchivedSignature): string {
  const of = `Inspection ${inspection}, revision ${revision}`;
  const says = record ? `; the text says “${resultNames[record.result]}”` : "";
  if (!verdict.fits) return `${of}: UNVERIFIED, ${faultWords[verdict.why]}${says}.`;
  const mark = record?.signature?.signer.mark ?? "none";
  return `${of}: signed by key ${fingerprint(verdict.key.id)} (${verdict.key.algorithm}) on ${day(verdict.at)}, identification ${mark}; text and signature fit${says}.`;
}

/** What the archive says of each key that fits; it is the archive's word, and nobody's else. */
export function archiveKeyLines(found: readonly ArchivedSignature[]): readonly string[] {
  const keys = new Map(found.flatMap(({ verdict }) => (verdict.fits ? [[verdict.key.id, verdict.key]] : [])));
  return [...keys.values()].map(({ id, from, reason, until, untilReason }) => {
    const end =
      until === null ? "in use when it was packed" : `until ${day(until)} (${keyReason(untilReason ?? "")})`;
    return `Key ${fingerprint(id)}: from ${day(from)} (${keyReason(reason)}), ${end}. SHA-256 ${id}`;
  });
}

/** How it ends: what was shown, and what no archive can show. */
export function archiveVerdictLine(found: readonly ArchivedSignature[]): string {
  const bad = found.filter(({ verdict }) => !verdict.fits).length;
  if (found.length === 0) return "This archive holds no signed record.";
  if (bad > 0) return `${bad} of ${found.length} signed records could not be verified: do not rely on them.`;
  return "Every signature fits. Whose the keys are, no archive can say: compare the fingerprints with their holders.";
}
