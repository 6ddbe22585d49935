import { createHash, sign, type KeyObject } from "node:crypto";
import { der, nothing, objectId, octets, readDer, sequence, setOf, smallInteger } from "./der";

// RFC 5652 (CMS), RFC 5035 (signing-certificate-v2), RFC 5754 and 5758 (algorithms with SHA-256).
const ids = {
  data: objectId("1.2.840.113549.1.7.1"),
  signedData: objectId("1.2.840.113549.1.7.2"),
  contentType: objectId("1.2.840.113549.1.9.3"),
  messageDigest: objectId("1.2.840.113549.1.9.4"),
  signingCertificateV2: objectId("1.2.840.113549.1.9.16.2.47"),
  sha256: objectId("2.16.840.1.101.3.4.2.1"),
  rsaSha256: objectId("1.2.840.113549.1.1.11"),
  ecdsaSha256: objectId("1.2.840.10045.4.3.2"),
};

const sha256 = (bytes: Uint8Array): Buffer => createHash("sha256").update(bytes).digest();
const attribute = (id: Buffer, value: Buffer): Buffer => sequence(id, setOf(value));

/**
 * A detached signature over bytes as ETSI EN 319 142-1 asks of baseline B-B: CMS SignedData with the content type, the
 * digest and the certificate that it is to be checked by among what is signed, and no time: in a PDF that stands beside it.
 * `chain`: DER, the signer's own certificate first. SHA-256 throughout.
 */
export function paperSignature(covered: Uint8Array, key: KeyObject, chain: readonly Uint8Array[]): Buffer {
  const own = chain[0] ?? new Uint8Array();
  const attributes = [
    attribute(ids.contentType, ids.data),
    attribute(ids.messageDigest, octets(sha256(covered))),
    // The hash is SHA-256 where none is named (RFC 5035, 4).
    attribute(ids.signingCertificateV2, sequence(sequence(sequence(octets(sha256(own)))))),
  ];
  const signed = setOf(...attributes);
  const algorithm =
    key.asymmetricKeyType === "rsa" ? sequence(ids.rsaSha256, nothing) : sequence(ids.ecdsaSha256);
  const signer = sequence(
    smallInteger(1),
    issuerAndSerial(own),
    sequence(ids.sha256, nothing),
    // What is signed is a set; within the signature the same bytes carry another tag (RFC 5652, 5.4).
    Buffer.concat([Buffer.from([0xa0]), signed.subarray(1)]),
    algorithm,
    octets(sign("sha256", signed, key)),
  );
  const signedData = sequence(
    smallInteger(1),
    setOf(sequence(ids.sha256, nothing)),
    sequence(ids.data),
    der(0xa0, ...chain),
    setOf(signer),
  );
  return sequence(ids.signedData, der(0xa0, signedData));
}

/** Who issued a certificate and its number there, as they stand in it (RFC 5280, 4.1). */
function issuerAndSerial(certificate: Uint8Array): Buffer {
  const [whole] = readDer(certificate);
  const [body] = readDer(whole?.inner ?? new Uint8Array());
  const fields = readDer(body?.inner ?? new Uint8Array());
  // Version 1 says no version.
  const from = fields[0]?.tag === 0xa0 ? 1 : 0;
  const [serial, , issuer] = fields.slice(from, from + 3);
  if (!serial || !issuer) throw new RangeError("no certificate");
  return sequence(issuer.all, serial.all);
}
