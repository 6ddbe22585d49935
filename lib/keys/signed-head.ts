import { z } from "zod";
import { fail, issue, ok, type Issue, type Result } from "@/lib/base";
import {
  checkSignature,
  KeySignatureSchema,
  type LogHead,
  LogHeadSchema,
  PublicKeySchema,
} from "@/lib/signature";
import type { Pen } from "@/lib/store";
import { installationSigner } from "./installation-key";
import { nodeKeys } from "./node-port";
import { keysById } from "./read-keys";
import { logHead } from "./write-keys";

/** The head of a log as it leaves the machine: to be kept elsewhere, and given back to a later verify. */
export const SignedHeadSchema = z.object({
  says: z.literal("toeline-log-head-1"),
  head: LogHeadSchema,
  key: PublicKeySchema,
  signature: KeySignatureSchema,
});
export type SignedHead = z.infer<typeof SignedHeadSchema>;

/** The newest entry of the log, signed now by this installation; null while the log is empty. */
export async function signedHead(pen: Pen, now: Date): Promise<SignedHead | null> {
  const signer = await installationSigner(pen, now);
  const [head, keys] = [await logHead(pen.db), await keysById(pen.db, [signer.keyId])];
  const known = keys.get(signer.keyId);
  if (!head || !known) return null;
  const about = { subject: `log:${head.seq}`, digest: head.hash, at: now.toISOString(), head: null };
  return {
    says: "toeline-log-head-1",
    head,
    key: PublicKeySchema.parse(known),
    signature: signer.sign(about),
  };
}

/**
 * - `head-not-understood`: neither such a file nor "NUMBER:HASH"
 * - `head-forged`: its own signature does not fit it
 */
export type HeadIssue = Issue<"head-not-understood" | "head-forged">;

export const headSentence = ({ code }: HeadIssue): string =>
  code === "head-forged"
    ? "The signature of this head does not fit it: it is not what an installation gave out."
    : "This is no head of a log: give the file that “npm run -s head” or the log page wrote, or NUMBER:HASH as printed.";

/** A head given back: the text of its file, or "NUMBER:HASH" as it stands on paper. */
export function readHead(text: string): Result<LogHead, HeadIssue> {
  const typed = /^\s*(\d{1,15})\s*:\s*([0-9a-f\s]{64,})\s*$/i.exec(text);
  if (typed) {
    const hash = (typed[2] ?? "").toLowerCase().replaceAll(/\s/g, "");
    const parsed = LogHeadSchema.safeParse({ seq: Number(typed[1]), hash });
    return parsed.success ? ok(parsed.data) : fail(issue("head-not-understood"));
  }
  const parsed = SignedHeadSchema.safeParse(jsonOrNull(text));
  if (!parsed.success) return fail(issue("head-not-understood"));
  const { head, key, signature } = parsed.data;
  const claimed = { subject: `log:${head.seq}`, digest: head.hash, keyId: key.id };
  const fits = checkSignature(
    claimed,
    signature,
    new Map([[key.id, { ...key, until: null }]]),
    nodeKeys,
  ).fits;
  return fits ? ok(head) : fail(issue("head-forged"));
}

function jsonOrNull(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
