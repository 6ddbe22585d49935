import { createHash } from "node:crypto";
import { z } from "zod";
import { fail, issue, ok, type Issue, type Result } from "@/lib/base";
import type { Db } from "@/lib/db";
import { installationSigner, keysById, nodeKeys } from "@/lib/keys";
import {
  consistencyProof,
  entryHash,
  inclusionProof,
  leafHash,
  LogEntrySchema,
  treeRoot,
  verifyConsistency,
  verifyInclusion,
} from "@/lib/ledger";
import { checkSignature, KeySignatureSchema, PublicKeySchema } from "@/lib/signature";
import { sha256Text, type Pen } from "@/lib/store";

const Hash = z.string().regex(/^[0-9a-f]{64}$/);
const Path = z.array(Hash).max(64).readonly();
const Size = z.int().min(1);

/** That one entry was in the log of an installation when it signed how far the log had come. Needs nothing else to verify. */
const LogProofSchema = z.object({
  says: z.literal("toeline-log-proof-1"),
  entry: LogEntrySchema,
  path: Path,
  /** How far the log had come: its entries, the root of the tree over them (RFC 9162, 2.1), signed by the installation. */
  checkpoint: z.object({ size: Size, root: Hash, key: PublicKeySchema, signature: KeySignatureSchema }),
  /** That it began with what an earlier proof spoke of; null where none was given. */
  grownFrom: z.object({ size: Size, root: Hash, path: Path }).nullable(),
});
export type LogProof = z.infer<typeof LogProofSchema>;

/**
 * - `proof-no-entry`: the log says nothing of what is to be shown
 * - `proof-not-understood`: no such file
 * - `proof-entry-changed`: the entry's hash is not that of its text
 * - `proof-not-in-log`: the path does not lead from the entry to the root
 * - `proof-forged`: the root is not signed by the key it names
 * - `proof-other-log`: the log did not begin with what the earlier proof spoke of, or another key speaks for it
 */
export type ProofIssue = Issue<
  | "proof-no-entry"
  | "proof-not-understood"
  | "proof-entry-changed"
  | "proof-not-in-log"
  | "proof-forged"
  | "proof-other-log"
>;

const sha256Bytes = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");
const leafOf = (hash: string): string => leafHash(Buffer.from(hash, "hex"), sha256Bytes);
const signedAs = (size: number): string => `tree:${size}`;

/** The leaves of the whole log, oldest first. */
async function leavesOf(db: Db): Promise<readonly string[]> {
  const rows = await db.logEntry.findMany({ orderBy: { seq: "asc" }, select: { hash: true } });
  return rows.map(({ hash }) => leafOf(hash));
}

/** Shows that the last entry of a subject is in the log as it is now; `since`: and that the log began with what that one says. */
export async function proveEntry(
  pen: Pen,
  subject: string,
  now: Date,
  since: LogProof["checkpoint"] | null = null,
): Promise<Result<LogProof, ProofIssue>> {
  const signer = await installationSigner(pen, now);
  const [key] = (await keysById(pen.db, [signer.keyId])).values();
  const [entry, leaves] = [
    await pen.db.logEntry.findFirst({ where: { subject }, orderBy: { seq: "desc" } }),
    await leavesOf(pen.db),
  ];
  if (!entry || !key) return fail(issue("proof-no-entry", [], { subject }));
  const [size, root] = [leaves.length, treeRoot(leaves, sha256Bytes)];
  if (since && since.size > size) return fail(issue("proof-other-log"));
  const about = { subject: signedAs(size), digest: root, at: now.toISOString(), head: null };
  const proof = {
    says: "toeline-log-proof-1" as const,
    entry,
    path: inclusionProof(leaves, entry.seq - 1, sha256Bytes),
    checkpoint: { size, root, key: PublicKeySchema.parse(key), signature: signer.sign(about) },
    grownFrom: since && {
      size: since.size,
      root: since.root,
      path: consistencyProof(leaves, since.size, sha256Bytes),
    },
  };
  // Where an entry is missing, or the log is not the one of before, nothing is shown rather than something that fails later.
  return readProof(JSON.stringify(proof));
}

/** A proof given back, verified by its own bytes: no data folder is asked. */
export function readProof(text: string): Result<LogProof, ProofIssue> {
  const parsed = LogProofSchema.safeParse(jsonOrNull(text));
  if (!parsed.success) return fail(issue("proof-not-understood"));
  const { entry, path, checkpoint, grownFrom } = parsed.data;
  const { size, root, key, signature } = checkpoint;
  if (entryHash(entry, sha256Text) !== entry.hash) return fail(issue("proof-entry-changed"));
  const claim = { leaf: leafOf(entry.hash), index: entry.seq - 1, size, root };
  if (!verifyInclusion(claim, path, sha256Bytes)) return fail(issue("proof-not-in-log"));
  const claimed = { subject: signedAs(size), digest: root, keyId: key.id };
  const known = new Map([[key.id, { ...key, until: null }]]);
  if (!checkSignature(claimed, signature, known, nodeKeys).fits) return fail(issue("proof-forged"));
  if (grownFrom && !verifyConsistency(grownFrom, { size, root }, grownFrom.path, sha256Bytes))
    return fail(issue("proof-other-log"));
  return ok(parsed.data);
}

function jsonOrNull(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

export const proofSentences: Readonly<Record<ProofIssue["code"], string>> = {
  "proof-no-entry":
    "The log holds no signed record of that number and revision, so there is nothing to show.",
  "proof-not-understood": "This is no proof: give the file that “npm run -s prove” wrote.",
  "proof-entry-changed": "The entry in this proof was changed after it was written: do not rely on it.",
  "proof-not-in-log": "The entry is not in the log that this proof speaks of: do not rely on it.",
  "proof-forged": "The signature of this proof does not fit it: it is not what an installation gave out.",
  "proof-other-log":
    "The log does not begin with what the earlier proof spoke of: it was written anew since, or it is another one.",
};

export const proofSentence = ({ code }: ProofIssue): string => proofSentences[code];
