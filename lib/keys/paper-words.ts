import { fingerprint, type Standing } from "@/lib/signature";
import type { PaperSigning } from "./paper-certificate";

/** What the PDF of a signed record carries beside its text, as a sentence. */
export function paperWords(signing: PaperSigning, standing: Standing): string {
  if (signing.kind === "none") return "The PDF carries no digital signature: no certificate is set up here.";
  if (standing.kind === "unverified")
    return "The PDF carries no digital signature: this installation vouches for nothing it could not verify.";
  const { name, until, isSelfSigned } = signing.certificate;
  if (signing.kind === "over")
    return `The PDF carries no digital signature: the certificate of ${name} is not valid today (until ${until.slice(0, 10)}).`;
  if (signing.kind === "closed")
    return `The PDF carries no digital signature: the key of ${name} does not open in this data folder.`;
  const vouched = isSelfSigned ? ", a certificate made here that nobody else vouches for" : "";
  return `The PDF carries a digital signature of this installation: ${name}${vouched}. Fingerprint ${fingerprint(signing.certificate.fingerprint)}`;
}
