import { z } from "zod";
import { canonicalJson } from "@/lib/base";
import { KEY_ALGORITHM, KeyIdSchema } from "./public-key";

const sha256 = z.string().regex(/^[0-9a-f]{64}$/);

/** The newest entry of a log: its number and its hash. */
export const LogHeadSchema = z.object({ seq: z.int().positive().max(1_000_000_000_000), hash: sha256 });
export type LogHead = z.infer<typeof LogHeadSchema>;

/** What a key says: this subject has this digest, and the log stood so when it was said. */
export const KeyStatementSchema = z.object({
  /** "signed:ID", "feedback:ID", "log:SEQ" */
  subject: z.string().min(1).max(120),
  /** SHA-256 of the text that is signed; of a log, the hash of the entry. */
  digest: sha256,
  keyId: KeyIdSchema,
  algorithm: z.literal(KEY_ALGORITHM),
  /** ISO 8601, UTC, by the clock of whoever signed. */
  at: z.iso.datetime(),
  /** Newest entry of the log before the signature; null: the log was empty, or the subject is the log itself. */
  head: LogHeadSchema.nullable(),
});
export type KeyStatement = z.infer<typeof KeyStatementSchema>;

export const KeySignatureSchema = KeyStatementSchema.extend({
  /** 64 bytes as base64url without padding. */
  signature: z.string().regex(/^[A-Za-z0-9_-]{86}$/),
});
export type KeySignature = z.infer<typeof KeySignatureSchema>;

/**
 * The bytes that are signed, as text: canonical JSON under a name of its own, so that a signature given for one thing
 * is none for any other.
 */
export function statementText({ subject, digest, keyId, algorithm, at, head }: KeyStatement): string {
  return canonicalJson({ says: "toeline-signature-1", subject, digest, keyId, algorithm, at, head });
}
