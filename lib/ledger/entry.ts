import { z } from "zod";
import { canonicalJson } from "@/lib/base";

const Hash = z.string().regex(/^[0-9a-f]{64}$/);

/** One line of the append-only log. `hash` covers all the others, `previous` is the hash of the entry before. */
export const LogEntrySchema = z.object({
  seq: z.int().min(1),
  /** ISO 8601, UTC. */
  at: z.string(),
  /** "owner", "person:ID", "hand-in:ID", "system"; never a name, so that a person can be removed. */
  by: z.string(),
  /** "bead.saved" */
  action: z.string(),
  /** "bead:ID" */
  subject: z.string(),
  /** SHA-256 of the subject's state after the change; null when it is gone. */
  digest: Hash.nullable(),
  /** Canonical JSON text of what else is to be said. */
  detail: z.string(),
  previous: Hash,
  hash: Hash,
});
export type LogEntry = z.infer<typeof LogEntrySchema>;
export type LogDraft = Pick<LogEntry, "at" | "by" | "action" | "subject" | "digest" | "detail">;

/** Lower-case hexadecimal SHA-256 of a UTF-8 text; brought by the caller, because every platform has its own. */
export type TextSha256 = (text: string) => string;

/** What the first entry has for the hash before it. */
export const CHAIN_START = "0".repeat(64);

/** The hash of an entry: SHA-256 of its canonical JSON without `hash`. */
export function entryHash(entry: Omit<LogEntry, "hash">, sha256: TextSha256): string {
  const { seq, at, by, action, subject, digest, detail, previous } = entry;
  return sha256(canonicalJson({ seq, at, by, action, subject, digest, detail, previous }));
}

/** The entry that follows `last` (null: the first). */
export function nextEntry(
  last: Pick<LogEntry, "seq" | "hash"> | null,
  draft: LogDraft,
  sha256: TextSha256,
): LogEntry {
  const open = { ...draft, seq: (last?.seq ?? 0) + 1, previous: last?.hash ?? CHAIN_START };
  return { ...open, hash: entryHash(open, sha256) };
}
