import { generateKeyPair, randomBytes } from "node:crypto";
import { promisify } from "node:util";
import forge from "node-forge";

/** A private key with the certificates it is checked by. */
export interface CertifiedKey {
  /** PKCS #8, DER */
  readonly privatePart: Buffer;
  /** DER, its own certificate first */
  readonly chain: readonly Buffer[];
}

/** Own choice: long enough for a shop, short enough that the key does not outlive what is thought of its strength. */
const YEARS = 5;
// BSI TR-02102-1 and NIST SP 800-57 ask for 3000 and 3072 bits beyond 2030 (from memory).
const RSA_BITS = 3072;

const newKey = promisify(generateKeyPair);

/**
 * A key pair and a certificate that it signs for itself: whoever reads it learns that nothing was changed, and whose it is
 * only from the fingerprint. `name`: what it is issued to, 2 to 64 letters.
 */
export async function ownCertificate(name: string, now: Date): Promise<CertifiedKey> {
  const { privateKey } = await newKey("rsa", { modulusLength: RSA_BITS });
  const key = forge.pki.privateKeyFromPem(privateKey.export({ format: "pem", type: "pkcs8" }) as string);
  const certificate = forge.pki.createCertificate();
  certificate.publicKey = forge.pki.setRsaPublicKey(key.n, key.e);
  // A serial number is positive and at most 20 bytes (RFC 5280, 4.1.2.2).
  certificate.serialNumber = `4${randomBytes(16).toString("hex").slice(1)}`;
  certificate.validity.notBefore = now;
  certificate.validity.notAfter = new Date(new Date(now).setUTCFullYear(now.getUTCFullYear() + YEARS));
  const subject = [{ shortName: "CN", value: name, valueTagClass: forge.asn1.Type.UTF8 }];
  // forge's types know no `valueTagClass` of this kind; forge does.
  certificate.setSubject(subject as unknown as forge.pki.CertificateField[]);
  certificate.setIssuer(subject as unknown as forge.pki.CertificateField[]);
  certificate.setExtensions([
    { name: "basicConstraints", cA: false, critical: true },
    { name: "keyUsage", digitalSignature: true, nonRepudiation: true, critical: true },
    { name: "subjectKeyIdentifier" },
  ]);
  certificate.sign(key, forge.md.sha256.create());
  return {
    privatePart: privateKey.export({ format: "der", type: "pkcs8" }),
    chain: [derBytes(forge.pki.certificateToAsn1(certificate))],
  };
}

/** What forge holds as a tree, as bytes. */
export const derBytes = (tree: forge.asn1.Asn1): Buffer =>
  Buffer.from(forge.asn1.toDer(tree).getBytes(), "latin1");
