import type { Tx } from "@/lib/db";
import { KEY_ALGORITHM, type KeySignature, type LogHead, type PublicKey } from "@/lib/signature";
import { newId, writeLog } from "@/lib/store";
import type { Signer } from "./key-pair";
import type { LockedBox } from "./locked-box";
import { nodeKeys } from "./node-port";

export interface LockedPart {
  readonly box: LockedBox;
  readonly lockedAt: string;
  readonly lockedBy: string;
}

/** Enters a key that was begun here; `sealed`: the private part of a person's, locked. */
export async function enterKey(
  tx: Tx,
  by: string,
  key: Omit<PublicKey, "until" | "untilReason" | "algorithm">,
  sealed: LockedPart | null,
): Promise<void> {
  const { id, publicKey, holder, personId, from, reason } = key;
  const data = { id, algorithm: KEY_ALGORITHM, publicKey, origin: "here", holder, personId, from, reason };
  await tx.signingKey.create({ data: { ...data, ...(sealed ? { sealed: { create: sealed } } : {}) } });
  await writeLog(tx, { by, subject: `key:${id}`, action: "key.begun", detail: { holder, reason } });
}

/** Enters a key that came with an archive, with its end where it had one. What is known stays as it is. */
export async function enterForeignKey(
  tx: Tx,
  by: string,
  { id, algorithm, publicKey, holder, personId, from, reason, until, untilReason }: PublicKey,
  archive: string,
): Promise<void> {
  // A false key under a true key's id would keep the true one out for good.
  if (nodeKeys.idOf(publicKey) !== id) return;
  if (await tx.signingKey.findUnique({ where: { id }, select: { id: true } })) return;
  const data = { id, algorithm, publicKey, origin: "archive", holder, personId, from, reason };
  await tx.signingKey.create({ data });
  const ended = { id: newId(), keyId: id, what: "ended", whose: null };
  if (until !== null) await tx.keyEvent.create({ data: { ...ended, at: until, reason: untilReason ?? "" } });
  await writeLog(tx, { by, subject: `key:${id}`, action: "key.imported", detail: { holder, archive } });
}

/** Ends a key: what it signed stays signed, and it signs no more. A private part that is locked here goes. */
export async function endKey(
  tx: Tx,
  by: string,
  keyId: string,
  end: { readonly at: string; readonly reason: string },
): Promise<void> {
  await tx.keyEvent.create({ data: { id: newId(), keyId, what: "ended", whose: null, ...end } });
  await tx.sealedKey.deleteMany({ where: { keyId } });
  await writeLog(tx, { by, subject: `key:${keyId}`, action: "key.ended", detail: { reason: end.reason } });
}

/** The log's newest entry; null while there is none. */
export async function logHead(tx: Tx): Promise<LogHead | null> {
  return tx.logEntry.findFirst({ orderBy: { seq: "desc" }, select: { seq: true, hash: true } });
}

/** Keeps a signature beside what it is over; the caller enters the subject in the log afterwards. */
export async function keepSignature(tx: Tx, { head, ...signature }: KeySignature): Promise<void> {
  const data = { ...signature, headSeq: head?.seq ?? null, headHash: head?.hash ?? null };
  await tx.keySignature.create({ data });
}

/** Signs the log's newest entry, and with it every entry before. Call it last within a transaction. */
export async function checkpoint(tx: Tx, by: string, signer: Signer, at: string): Promise<void> {
  const head = await logHead(tx);
  if (!head) return;
  const signature = signer.sign({ subject: `log:${head.seq}`, digest: head.hash, at, head: null });
  await keepSignature(tx, signature);
  await writeLog(tx, {
    by,
    subject: `checkpoint:${head.seq}`,
    action: "log.checkpoint",
    detail: { seq: head.seq },
  });
}
