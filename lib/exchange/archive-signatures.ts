import { readRevision, type SignedRecord } from "@/lib/inspect";
import { checkSignature, type KeyPort, type SignatureFault, type SignatureVerdict } from "@/lib/signature";
import type { ArchiveManifest } from "./archive-manifest";

/** A signed revision of an archive, and what speaks for it: nothing but the archive is asked. */
export interface ArchivedSignature {
  readonly inspection: number;
  readonly revision: number;
  readonly job: string;
  /** null: the text does not read as a record. */
  readonly record: SignedRecord | null;
  /** `row-differs`, `text-changed`: what is signed is not asked any more then. */
  readonly verdict:
    | Extract<SignatureVerdict, { fits: true }>
    | { readonly fits: false; readonly why: SignatureFault | "row-differs" | "text-changed" };
}

/**
 * Which key signed what in an archive, and when. Whose a key is, no archive can say: compare its fingerprint with its
 * holder. `sha256`: of a UTF-8 text, hexadecimal.
 */
export function archiveSignatures(
  { jobs = [], keys = [] }: ArchiveManifest,
  port: KeyPort,
  sha256: (text: string) => string,
): readonly ArchivedSignature[] {
  const known = new Map(keys.map((key) => [key.id, key]));
  return jobs.flatMap(({ content: { title }, inspections }) =>
    inspections.flatMap(({ id: inspectionId, number, signed }) =>
      signed.map(({ signature, ...revised }): ArchivedSignature => {
        const { record, claimed, sound } = readRevision(
          { ...revised, inspectionId },
          sha256(revised.content),
        );
        const verdict =
          sound === "sound"
            ? checkSignature(claimed, signature ?? null, known, port)
            : ({ fits: false, why: sound } as const);
        return { inspection: number, revision: revised.revision, job: title, record, verdict };
      }),
    ),
  );
}
