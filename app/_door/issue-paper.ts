import type { Db } from "@/lib/db";
import { paperSigning } from "@/lib/keys";
import { signPaper } from "@/lib/pdf";
import type { Standing } from "@/lib/signature";

/** What the signature of the installation says, in the words that readers of PDF show. */
const REASON = "Issued by this installation. Who signed the record stands on its first page.";

/**
 * The paper of a signed record as it leaves: with the digital signature of this installation, where the owner has set up a
 * certificate. The paper is the same each time; the time in the signature is that of this copy, because that is when the
 * installation signs it. What could not be verified here is not vouched for.
 */
export async function issuePaper(
  db: Db,
  paper: Uint8Array,
  standing: Standing,
  now: Date,
): Promise<Uint8Array> {
  if (standing.kind === "unverified") return paper;
  const signing = await paperSigning(db, now);
  if (signing.kind !== "ready") return paper;
  const { certificate, sign } = signing;
  return signPaper(paper, { name: certificate.name, reason: REASON, at: now.toISOString(), sign });
}
