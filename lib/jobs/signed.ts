import { canonicalJson, fail, issue, ok, type Result } from "@/lib/base";
import type { Db, Tx } from "@/lib/db";
import { InspectionDraftSchema, openPoints, readRecord, sealRecord, type SignedRecord } from "@/lib/inspect";
import { sha256Text, newId, writing, type Pen, type RecordIssue } from "@/lib/store";
import { draftRecord } from "./inspections";

export interface SignedRevisionRecord {
  readonly id: string;
  readonly revision: number;
  readonly digest: string;
  readonly signedById: string;
  readonly signedAt: string;
  readonly reason: string | null;
  /** null: the text no longer reads as a record; the verifier says that it was changed. */
  readonly record: SignedRecord | null;
  /** Whether the text still has its digest. */
  readonly intact: boolean;
}

type Row = {
  id: string;
  revision: number;
  content: string;
  digest: string;
  signedById: string;
  signedAt: string;
  reason: string | null;
};

function toSigned({ content, ...row }: Row): SignedRevisionRecord {
  return { ...row, record: readOrNull(content), intact: sha256Text(content) === row.digest };
}

function readOrNull(text: string): SignedRecord | null {
  try {
    return readRecord(text);
  } catch {
    return null;
  }
}

const columns = {
  id: true,
  revision: true,
  content: true,
  digest: true,
  signedById: true,
  signedAt: true,
  reason: true,
} as const;

/** Every signed revision of an inspection, oldest first. */
export async function listSigned(db: Db, inspectionId: string): Promise<readonly SignedRevisionRecord[]> {
  const rows = await db.signedRevision.findMany({
    where: { inspectionId },
    orderBy: { revision: "asc" },
    select: columns,
  });
  return rows.map(toSigned);
}

/** What a signer has before their eyes: the digest of the record without a signature. */
export const seenDigest = (record: SignedRecord): string => sha256Text(canonicalJson(record));

export interface Signing {
  readonly inspectionId: string;
  readonly signerId: string;
  /** `seenDigest` of the record on the signer's screen: nobody signs what they have not seen. */
  readonly seen: string;
  /** What they say to the open points; wanted where there are any. */
  readonly acknowledgement: string;
  /** Why there is a further revision; wanted from the second on. */
  readonly reason: string;
  readonly now: Date;
}

/**
 * Freezes the record as it stands now under the signer's identification. The caller has made sure that the signer is
 * who they say (their passphrase, just now); here it is checked that they are an inspector with an account.
 */
export async function signInspection(
  pen: Pen,
  signing: Signing,
): Promise<Result<{ readonly revision: number; readonly digest: string }, RecordIssue>> {
  const record = await draftRecord(pen.db, signing.inspectionId);
  if (!record) return fail(issue("inspection-gone"));
  if (seenDigest(record) !== signing.seen) return fail(issue("sign-not-what-was-seen"));
  const [acknowledgement, reason] = [signing.acknowledgement.trim(), signing.reason.trim()];
  if (openPoints(record).length > 0 && acknowledgement.length < 5)
    return fail(issue("sign-points-unanswered"));
  return writing(pen, async (tx, log) => {
    const ready = await readyToSign(tx, { ...signing, reason });
    if (!ready.ok) return ready;
    const { signer, row, draft, last } = ready.value;
    const revision = (last?.revision ?? 0) + 1;
    const signedAt = signing.now.toISOString();
    const { text } = sealRecord(record, last && readOrNull(last.content), {
      revision,
      signedAt,
      signer,
      acknowledgement: openPoints(record).length > 0 ? acknowledgement : "",
      reason: last ? reason : null,
      previousDigest: last?.digest ?? null,
    });
    const digest = sha256Text(text);
    const [inspectionId, signedById, id] = [row.id, signing.signerId, newId()];
    const frozen = { id, inspectionId, revision, content: text, digest, signedById, signedAt };
    await tx.signedRevision.create({ data: { ...frozen, reason: last ? reason : null } });
    await tx.inspection.update({
      where: { id: inspectionId },
      data: { draft: { ...draft, open: false }, revision: row.revision + 1 },
    });
    await log(`signed:${id}`, "record.signed", { inspection: inspectionId, revision, digest });
    await log(`inspection:${inspectionId}`, "inspection.signed", { revision });
    return ok({ revision, digest });
  });
}

/** Who signs, what is open for it and what was signed last; or why nothing can be signed. */
async function readyToSign(tx: Tx, { inspectionId, signerId, reason }: Signing) {
  const person = await tx.person.findUnique({ where: { id: signerId } });
  if (!person?.name || !person.salt || !person.userId || person.role !== "inspector" || person.removedAt)
    return fail<RecordIssue>(issue("sign-not-inspector"));
  const row = await tx.inspection.findUniqueOrThrow({ where: { id: inspectionId } });
  const draft = InspectionDraftSchema.parse(row.draft);
  if (!draft.open) return fail<RecordIssue>(issue("inspection-signed"));
  const last = await tx.signedRevision.findFirst({ where: { inspectionId }, orderBy: { revision: "desc" } });
  if (last && reason.length < 5) return fail<RecordIssue>(issue("sign-reason-missing"));
  const signer = {
    personId: person.id,
    mark: person.mark,
    nameHash: sha256Text(person.salt + person.name),
  };
  return ok({ signer, row, draft, last });
}

/** Whether a signed record names this person: their name is there only as a digest. False once they were removed. */
export async function signerName(db: Db, record: SignedRecord): Promise<string | null> {
  if (!record.signature) return null;
  const { personId, nameHash } = record.signature.signer;
  const person = await db.person.findUnique({ where: { id: personId } });
  if (!person?.name || !person.salt) return null;
  return sha256Text(person.salt + person.name) === nameHash ? person.name : null;
}
