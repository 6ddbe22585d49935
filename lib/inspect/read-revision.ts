import type { Claimed } from "@/lib/signature";
import { readRecord } from "./make-record";
import type { SignedRecord } from "./signed-record";

/** A signed text with what stands beside it, as it is stored and as it travels. */
export interface RevisionRow {
  readonly id: string;
  readonly inspectionId: string;
  readonly revision: number;
  readonly content: string;
  readonly digest: string;
  readonly signedById: string;
  readonly signedAt: string;
  readonly reason: string | null;
}

export interface ReadRevision {
  /** null: the text does not read as a record. */
  readonly record: SignedRecord | null;
  /** What a signature should be of. */
  readonly claimed: Claimed;
  /** Whom the text names as its signer. */
  readonly signerId: string;
  /** Whether the text has its digest, and the row beside it says what the text says. */
  readonly sound: "sound" | "row-differs" | "text-changed";
}

/** A row read without believing any of it. `textDigest`: SHA-256 of its content. */
export function readRevision(row: RevisionRow, textDigest: string): ReadRevision {
  const record = readOrNull(row.content);
  const claimed = {
    subject: `signed:${row.id}`,
    digest: row.digest,
    keyId: record?.signature?.key?.id ?? null,
  };
  const signerId = record?.signature?.signer.personId ?? "";
  const sound =
    textDigest !== row.digest ? "text-changed" : record && rowFits(row, record) ? "sound" : "row-differs";
  return { record, claimed, signerId, sound };
}

function readOrNull(text: string): SignedRecord | null {
  try {
    return readRecord(text);
  } catch {
    return null;
  }
}

function rowFits(row: RevisionRow, { inspection, signature }: SignedRecord): boolean {
  return (
    signature !== null &&
    inspection.id === row.inspectionId &&
    signature.revision === row.revision &&
    signature.signedAt === row.signedAt &&
    signature.signer.personId === row.signedById &&
    signature.reason === row.reason
  );
}
