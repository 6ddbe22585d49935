import { createHash, createPublicKey, verify } from "node:crypto";
import type { KeyPort } from "@/lib/signature";

/** What stands before the 32 bytes of an Ed25519 key in the form that Node reads (RFC 8410, SubjectPublicKeyInfo). */
const SPKI_HEAD = Buffer.from("302a300506032b6570032100", "hex");

/** The bytes of a base64url text that is exactly their own writing; null for any other. */
function bytesOf(text: string, length: number): Buffer | null {
  const bytes = Buffer.from(text, "base64url");
  return bytes.length === length && bytes.toString("base64url") === text ? bytes : null;
}

/** SHA-256 of a key's bytes. */
export const idOfBytes = (publicKey: Uint8Array): string =>
  createHash("sha256").update(publicKey).digest("hex");

/** Ed25519 by Node's own crypto. */
export const nodeKeys: KeyPort = {
  idOf(publicKey) {
    const bytes = bytesOf(publicKey, 32);
    return bytes && idOfBytes(bytes);
  },
  verifies(publicKey, text, signature) {
    const [key, signed] = [bytesOf(publicKey, 32), bytesOf(signature, 64)];
    if (!key || !signed) return false;
    try {
      const spki = Buffer.concat([SPKI_HEAD, key]);
      return verify(
        null,
        Buffer.from(text, "utf8"),
        createPublicKey({ key: spki, format: "der", type: "spki" }),
        signed,
      );
    } catch {
      return false;
    }
  },
};
