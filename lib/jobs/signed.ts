import { canonicalJson, fail, invariant, issue, ok, type Result } from "@/lib/base";
import type { Db, Tx } from "@/lib/db";
import {
  InspectionDraftSchema,
  openPoints,
  readRevision,
  sealRecord,
  type RevisionRow,
  type SignedRecord,
} from "@/lib/inspect";
import {
  checkpoint,
  installationSigner,
  keepSignature,
  logHead,
  openPersonKey,
  standings,
  type OpenedKey,
} from "@/lib/keys";
import { KEY_ALGORITHM, mayNameSigner, type Standing } from "@/lib/signature";
import { sha256Text, newId, writing, type Pen, type RecordIssue } from "@/lib/store";
import { draftRecord } from "./inspections";
import { isSigner, weldsOf } from "./signer";

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
  /** How far it can be relied on: by which key, or by nothing that could be checked here. */
  readonly standing: Standing;
  /** Name of who signed, where the standing allows a local one and the person was not removed since. */
  readonly signer: string | null;
}

const columns = {
  id: true,
  inspectionId: true,
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
  const read = rows.map((row) => ({ row, ...readRevision(row, sha256Text(row.content)) }));
  const stand = await standings(
    db,
    read.map(({ claimed, signerId, sound }) => ({ ...claimed, signerId, sound })),
  );
  return Promise.all(
    read.map(async ({ row: { content: _, inspectionId: _of, ...row }, record, claimed, sound }) => {
      const standing = stand.get(claimed.subject);
      invariant(standing !== undefined, `${claimed.subject} was not looked at`);
      const signer = record && mayNameSigner(standing) ? await signerName(db, record) : null;
      return { ...row, record, intact: sound !== "text-changed", standing, signer };
    }),
  );
}

/** What a signer has before their eyes: the digest of the record without a signature. */
export const seenDigest = (record: SignedRecord): string => sha256Text(canonicalJson(record));

export interface Signing {
  readonly inspectionId: string;
  readonly signerId: string;
  /** Opens the key they sign by; whoever does not know it cannot sign for them. */
  readonly passphrase: string;
  /** `seenDigest` of the record on the signer's screen: nobody signs what they have not seen. */
  readonly seen: string;
  /** What they say to the open points; wanted where there are any. */
  readonly acknowledgement: string;
  /** Why there is a further revision; wanted from the second on. */
  readonly reason: string;
  readonly now: Date;
}

/**
 * Freezes the record as it stands now under the signer's identification, signed by the signer's key, which their
 * passphrase opens. The caller has made sure that the signer is who they say; here it is checked that they are an
 * inspector with an account. The signature names the log's newest entry, so that it speaks for the log before it too.
 */
export async function signInspection(
  pen: Pen,
  signing: Signing,
): Promise<Result<{ readonly revision: number; readonly digest: string }, RecordIssue>> {
  const record = await draftRecord(pen.db, signing.inspectionId);
  if (!record) return fail(issue("inspection-gone"));
  if (seenDigest(record) !== signing.seen) return fail(issue("sign-not-what-was-seen"));
  const [acknowledgement, reason] = [signing.acknowledgement.trim(), signing.reason.trim()];
  const isOpen = openPoints(record).length > 0;
  if (isOpen && acknowledgement.length < 5) return fail(issue("sign-points-unanswered"));
  const opened = await keyOf(pen.db, signing);
  if (!opened.ok) return opened;
  const keeper = await installationSigner(pen, signing.now);
  return writing(pen, async (tx, log) => {
    const ready = await readyToSign(tx, {
      ...signing,
      acknowledgement: isOpen ? acknowledgement : "",
      reason,
    });
    if (!ready.ok) return ready;
    const row = await freeze(tx, record, ready.value, opened.value);
    const { id, inspectionId, revision, digest, signedAt } = row;
    await log(`signed:${id}`, "record.signed", { inspection: inspectionId, revision, digest });
    await log(`inspection:${inspectionId}`, "inspection.signed", { revision });
    await checkpoint(tx, pen.by, keeper, signedAt);
    return ok({ revision, digest });
  });
}

/** Writes the frozen text with the signature over it beside it, and closes the draft. */
async function freeze(
  tx: Tx,
  record: SignedRecord,
  { signer, row, draft, last, signing }: Ready,
  opened: OpenedKey,
): Promise<RevisionRow> {
  const revision = (last?.revision ?? 0) + 1;
  const [signedAt, reason] = [signing.now.toISOString(), last ? signing.reason : null];
  const ranWelds = await weldsOf(tx, record, signer);
  const { text } = sealRecord(record, last && readRevision(last, last.digest).record, {
    revision,
    signedAt,
    signer,
    ...(ranWelds.length > 0 ? { ranWelds } : {}),
    acknowledgement: signing.acknowledgement,
    reason,
    previousDigest: last?.digest ?? null,
    key: keyWords(opened),
  });
  const [id, digest, signedById] = [newId(), sha256Text(text), signing.signerId];
  const frozen = { id, inspectionId: row.id, revision, content: text, digest, signedById, signedAt, reason };
  await tx.signedRevision.create({ data: frozen });
  const about = { subject: `signed:${id}`, digest, at: signedAt, head: await logHead(tx) };
  await keepSignature(tx, opened.signer.sign(about));
  const closed = { draft: { ...draft, open: false }, revision: row.revision + 1 };
  await tx.inspection.update({ where: { id: row.id }, data: closed });
  return frozen;
}

/** The signer's key; people who may not sign at all are told that first. */
async function keyOf(db: Db, { signerId, passphrase }: Signing): Promise<Result<OpenedKey, RecordIssue>> {
  const person = await db.person.findUnique({ where: { id: signerId }, select: { role: true, also: true } });
  if (!isSigner(person)) return fail(issue("sign-not-inspector"));
  const opened = await openPersonKey(db, signerId, passphrase);
  if (typeof opened !== "string") return ok(opened);
  return fail(issue(opened === "key-missing" ? "sign-key-missing" : "sign-key-closed"));
}

const keyWords = ({ signer, since, passphraseSetAt, passphraseSetBy }: OpenedKey) => ({
  id: signer.keyId,
  algorithm: KEY_ALGORITHM,
  since,
  passphraseSetAt,
  passphraseSetBy,
});

type Ready = Extract<Awaited<ReturnType<typeof readyToSign>>, { ok: true }>["value"];

/** Who signs, what is open for it and what was signed last; or why nothing can be signed. */
async function readyToSign(tx: Tx, signing: Signing) {
  const { inspectionId, signerId, reason } = signing;
  const person = await tx.person.findUnique({ where: { id: signerId } });
  if (!person?.name || !person.salt || !person.userId || !isSigner(person) || person.removedAt)
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
  return ok({ signer, row, draft, last, signing });
}

/** The person a signed record names, if that is their name: it is there only as a digest. Null once they were removed. */
async function signerName(db: Db, record: SignedRecord): Promise<string | null> {
  if (!record.signature) return null;
  const { personId, nameHash } = record.signature.signer;
  const person = await db.person.findUnique({ where: { id: personId } });
  if (!person?.name || !person.salt) return null;
  return sha256Text(person.salt + person.name) === nameHash ? person.name : null;
}
