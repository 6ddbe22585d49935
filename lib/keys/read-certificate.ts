import { createPublicKey, X509Certificate, type KeyObject } from "node:crypto";

/** What a certificate says of itself. */
export interface CertificateFacts {
  /** SHA-256 of its bytes, hex: the fingerprint that people compare. */
  readonly fingerprint: string;
  /** The common name it is issued to; the whole subject where it has none. */
  readonly name: string;
  readonly issuer: string;
  /** Signed by its own key: nobody else vouches for it. */
  readonly isSelfSigned: boolean;
  /** ISO 8601, UTC */
  readonly from: string;
  readonly until: string;
}

/** Throws on bytes that are no certificate. */
export function certificateFacts(bytes: Uint8Array): CertificateFacts {
  const read = new X509Certificate(bytes);
  const { subject, issuer } = read.toLegacyObject();
  return {
    fingerprint: read.fingerprint256.replaceAll(":", "").toLowerCase(),
    name: commonName(subject) ?? read.subject.replaceAll("\n", ", "),
    issuer: commonName(issuer) ?? read.issuer.replaceAll("\n", ", "),
    isSelfSigned: read.subject === read.issuer && read.verify(read.publicKey),
    from: new Date(read.validFrom).toISOString(),
    until: new Date(read.validTo).toISOString(),
  };
}

function commonName(whole: unknown): string | null {
  const name = (whole as { CN?: string | string[] } | undefined)?.CN;
  return (Array.isArray(name) ? name[0] : name) ?? null;
}

/** Whether this key is the one of the certificate. */
export const belongsTo = (bytes: Uint8Array, key: KeyObject): boolean =>
  new X509Certificate(bytes).publicKey.equals(createPublicKey(key));

/** At least as strong as 112 bits (NIST SP 800-57, from memory), and of a kind that readers of PDF know. */
export function isStrongEnough(key: KeyObject): boolean {
  const details = key.asymmetricKeyDetails;
  if (key.asymmetricKeyType === "rsa") return (details?.modulusLength ?? 0) >= 2048;
  if (key.asymmetricKeyType !== "ec") return false;
  return ["prime256v1", "secp384r1", "secp521r1"].includes(details?.namedCurve ?? "");
}

// Object identifier 2.5.29.15 (RFC 5280, 4.2.1.3), as it lies in a certificate.
const KEY_USAGE = Buffer.from("0603551d0f", "hex");

/** Whether it may be used for signatures; a certificate that names no use may be used for all. */
export function isForSigning(bytes: Uint8Array): boolean {
  const all = Buffer.from(bytes);
  const at = all.indexOf(KEY_USAGE);
  if (at < 0) return true;
  let next = at + KEY_USAGE.length;
  if (all[next] === 0x01) next += 3;
  // An octet string around a string of bits: the first bit is digitalSignature, the second contentCommitment.
  const bits = all[next + 5] ?? 0;
  return (bits & 0b1100_0000) !== 0;
}
