import { createPrivateKey, X509Certificate } from "node:crypto";
import forge from "node-forge";
import { fail, issue, ok, type Result } from "@/lib/base";
import type { RecordIssue } from "@/lib/store";
import { derBytes, type CertifiedKey } from "./own-certificate";
import { belongsTo, certificateFacts, isForSigning, isStrongEnough } from "./read-certificate";

/** More than any certificate with its chain takes. */
const MOST_BYTES = 64 * 1024;
/** Less than the room that a paper keeps for its signature. */
const MOST_CHAIN_BYTES = 16 * 1024;
const { pkcs8ShroudedKeyBag, keyBag, certBag } = forge.pki.oids as Record<
  "pkcs8ShroudedKeyBag" | "keyBag" | "certBag",
  string
>;

/**
 * A private key and its certificates out of a PKCS #12 file (RFC 7292), opened by its passphrase, which is used here and
 * nowhere kept. Refused with the reason where it cannot sign papers now.
 */
export function readPkcs12(
  file: Uint8Array,
  passphrase: string,
  now: Date,
): Result<CertifiedKey, RecordIssue> {
  if (file.length === 0 || file.length > MOST_BYTES) return fail(issue("certificate-file"));
  let tree: forge.asn1.Asn1;
  try {
    tree = forge.asn1.fromDer(Buffer.from(file).toString("latin1"));
  } catch {
    return fail(issue("certificate-file"));
  }
  let bags: forge.pkcs12.Pkcs12Pfx;
  try {
    bags = forge.pkcs12.pkcs12FromAsn1(tree, false, passphrase);
  } catch (error) {
    const isShut = error instanceof Error && /password|decrypt|MAC/i.test(error.message);
    return fail(issue(isShut ? "certificate-passphrase" : "certificate-file"));
  }
  return checked(bags, now);
}

function checked(file: forge.pkcs12.Pkcs12Pfx, now: Date): Result<CertifiedKey, RecordIssue> {
  const [bag] = [...bagsOf(file, pkcs8ShroudedKeyBag), ...bagsOf(file, keyBag)];
  if (!bag) return fail(issue("certificate-key"));
  try {
    const privatePart = privateBytes(bag);
    const key = createPrivateKey({ key: privatePart, format: "der", type: "pkcs8" });
    const all = bagsOf(file, certBag).map(certificateBytes);
    const own = all.find((one) => belongsTo(one, key));
    if (!own) return fail(issue("certificate-key"));
    if (!isStrongEnough(key)) return fail(issue("certificate-weak"));
    if (!isForSigning(own)) return fail(issue("certificate-other-use"));
    if (!isValidAt(own, now)) return fail(issue("certificate-not-now"));
    return ok({ privatePart, chain: shortened([own, ...all.filter((one) => one !== own)]) });
  } catch {
    return fail(issue("certificate-file"));
  }
}

/** As much of a chain as a signature has room for; the own certificate is never left out. */
function shortened(chain: readonly Buffer[]): readonly Buffer[] {
  let bytes = 0;
  return chain.filter((one, i) => (bytes += one.length) <= MOST_CHAIN_BYTES || i === 0);
}

const bagsOf = (file: forge.pkcs12.Pkcs12Pfx, bagType: string): readonly forge.pkcs12.Bag[] =>
  file.getBags({ bagType })[bagType] ?? [];

/** forge reads RSA keys; another kind it leaves as the tree it stands in, which is PKCS #8 already. */
function privateBytes({ key, asn1 }: forge.pkcs12.Bag): Buffer {
  if (!key) return derBytes(asn1);
  return derBytes(forge.pki.wrapRsaPrivateKey(forge.pki.privateKeyToAsn1(key)));
}

const certificateBytes = ({ cert, asn1 }: forge.pkcs12.Bag): Buffer =>
  new X509Certificate(derBytes(cert ? forge.pki.certificateToAsn1(cert) : asn1)).raw;

function isValidAt(certificate: Uint8Array, now: Date): boolean {
  const { from, until } = certificateFacts(certificate);
  return Date.parse(from) <= now.getTime() && now.getTime() < Date.parse(until);
}
