import { existsSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { dataFolderOf, engineOf, writeTogether } from "@/lib/db";
import type { Pen } from "@/lib/store";
import { newPrivatePart, signerOf, type Signer } from "./key-pair";
import { checkpoint, endKey, enterKey } from "./write-keys";

/** Holds the private part; readable by the server's user only, and never in an archive. */
const FILE = "installation-key";

/**
 * On a PostgreSQL another server may have the private part, so a folder without it is no reason to end a key: every server
 * is given the same `installation-key` and `session-key`.
 */
export class KeyElsewhere extends Error {
  override readonly message =
    "This database is signed by a key that does not lie in this data folder. Copy the files installation-key and session-key from the data folder of the server that has them.";
}

/**
 * Who signs for this installation. The key pair is made when it is first needed; where the private part is not in the
 * data folder any more (a folder put together from parts), the key before ends and another begins.
 */
export async function installationSigner(pen: Pen, now: Date): Promise<Signer> {
  const signer = readOrMake(path.join(dataFolderOf(pen.db), FILE));
  await writeTogether(pen.db, async (tx) => {
    if (await tx.signingKey.findUnique({ where: { id: signer.keyId }, select: { id: true } })) return;
    const at = now.toISOString();
    const before = await tx.signingKey.findMany({
      where: { origin: "here", holder: "installation", events: { none: { what: "ended" } } },
      select: { id: true },
    });
    if (before.length > 0 && engineOf(pen.db) === "postgresql") throw new KeyElsewhere();
    for (const { id } of before) await endKey(tx, "system", id, { at, reason: "private-part-gone" });
    const reason = before.length > 0 ? "private-part-gone" : "first-need";
    const { keyId: id, publicKey } = signer;
    const key = { id, publicKey, holder: "installation", personId: null, from: at, reason } as const;
    await enterKey(tx, "system", key, null);
    // What was there before there were keys is under the first signature over the log.
    await checkpoint(tx, "system", signer, at);
  });
  return signer;
}

/** The private part in a data folder, for what follows from it within this room; null: there is none. */
export function installationPart(folder: string): Buffer | null {
  const file = path.join(folder, FILE);
  return existsSync(file) ? readPart(file) : null;
}

/** Id of the key whose private part lies in a data folder; null: none does, or what lies there is no key. */
export function installationKeyId(folder: string): string | null {
  try {
    return signerOf(readPart(path.join(folder, FILE))).keyId;
  } catch {
    return null;
  }
}

const readPart = (file: string): Buffer => Buffer.from(readFileSync(file, "utf8"), "base64");

function readOrMake(file: string): Signer {
  if (!existsSync(file)) {
    try {
      writeFileSync(file, newPrivatePart().toString("base64"), { mode: 0o600, flag: "wx" });
    } catch (error) {
      // Another process was faster; its key is the one.
      if ((error as NodeJS.ErrnoException).code !== "EEXIST") throw error;
    }
  }
  return signerOf(readPart(file));
}
