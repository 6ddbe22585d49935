import type { Tx } from "@/lib/db";
import { writeLog } from "@/lib/store";
import { newPrivatePart, signerOf, type Signer } from "./key-pair";
import { lock, unlock, type LockedBox } from "./locked-box";
import { endKey, enterKey } from "./write-keys";

/** The key of a person that is in use; null: none. */
const inUse = (tx: Tx, personId: string) =>
  tx.signingKey.findFirst({
    where: { origin: "here", personId, events: { none: { what: "ended" } } },
    include: { sealed: true },
  });

/** Whether somebody has a key to sign by. */
export const hasPersonKey = async (db: Tx, personId: string): Promise<boolean> =>
  (await inUse(db, personId)) !== null;

/** A person's key opened by their passphrase, with when and by whom that passphrase was set. */
export interface OpenedKey {
  readonly signer: Signer;
  /** ISO 8601, UTC: when the key was begun. */
  readonly since: string;
  readonly passphraseSetAt: string;
  /**
   * "own": they changed it themselves; "code:BY": chosen with a one-time code that BY gave; "first": chosen by whoever
   * knew the one before, which may have been set by somebody else.
   */
  readonly passphraseSetBy: string;
}

/**
 * - `key-missing`: this person has no key in use
 * - `key-closed`: the passphrase does not open it
 */
export type KeyRefusal = "key-missing" | "key-closed";

/** Opens the key a person signs by. Costs a fraction of a second: keep it out of a transaction. */
export async function openPersonKey(
  db: Tx,
  personId: string,
  passphrase: string,
): Promise<OpenedKey | KeyRefusal> {
  const row = await inUse(db, personId);
  if (!row?.sealed) return "key-missing";
  const opened = await unlock(row.sealed.box, passphrase, row.id);
  if (!opened) return "key-closed";
  const { lockedAt, lockedBy } = row.sealed;
  return {
    signer: signerOf(opened),
    since: row.from,
    passphraseSetAt: lockedAt,
    passphraseSetBy: lockedBy,
  };
}

/** What a new passphrase does to a person's key, worked out before anything is written. */
export interface PreparedKey {
  /** The key that goes on, locked anew; null: another one begins. */
  readonly goesOn: string | null;
  readonly begins: { readonly id: string; readonly publicKey: string } | null;
  readonly box: LockedBox;
}

/**
 * Locks a person's key by a new passphrase. `before`: the passphrase until now; where it opens the key, the key goes on.
 * Null (a one-time code), or one that does not open it: another key begins, because nobody can open the old one.
 */
export async function preparePersonKey(
  db: Tx,
  personId: string,
  before: string | null,
  next: string,
): Promise<PreparedKey> {
  const row = await inUse(db, personId);
  const opened = before === null || !row?.sealed ? null : await unlock(row.sealed.box, before, row.id);
  if (row && opened) return { goesOn: row.id, begins: null, box: await lock(opened, next, row.id) };
  const privatePart = newPrivatePart();
  const { keyId: id, publicKey } = signerOf(privatePart);
  return { goesOn: null, begins: { id, publicKey }, box: await lock(privatePart, next, id) };
}

/** Writes what was prepared. `setBy`: as in `OpenedKey`. */
export async function writePersonKey(
  tx: Tx,
  by: string,
  personId: string,
  { goesOn, begins, box }: PreparedKey,
  { at, setBy }: { readonly at: string; readonly setBy: string },
): Promise<void> {
  const lockedAs = { box, lockedAt: at, lockedBy: setBy };
  if (goesOn !== null) {
    await tx.sealedKey.update({ where: { keyId: goesOn }, data: lockedAs });
    await writeLog(tx, { by, subject: `key:${goesOn}`, action: "key.locked-anew", detail: { by: setBy } });
    return;
  }
  if (begins === null) return;
  const byCode = setBy.startsWith("code:");
  const old = await inUse(tx, personId);
  if (old)
    await endKey(tx, by, old.id, { at, reason: byCode ? "passphrase-by-code" : "passphrase-by-other" });
  const reason = byCode ? "one-time-code" : "own-passphrase";
  await enterKey(tx, by, { ...begins, holder: "person", personId, from: at, reason }, lockedAs);
}

/** Ends what a person signs by, for good: with their removal, their account, or the last role that signs. */
export async function endPersonKey(
  tx: Tx,
  by: string,
  personId: string,
  end: { readonly at: string; readonly reason: "person-removed" | "account-closed" | "role-ended" },
): Promise<void> {
  const row = await inUse(tx, personId);
  if (row) await endKey(tx, by, row.id, end);
}
