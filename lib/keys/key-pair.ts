import { createPrivateKey, createPublicKey, generateKeyPairSync, sign, type KeyObject } from "node:crypto";
import { KEY_ALGORITHM, statementText, type KeySignature } from "@/lib/signature";
import { idOfBytes } from "./node-port";

/** Somebody who can sign now: the private part stays inside. */
export interface Signer {
  readonly keyId: string;
  /** base64url */
  readonly publicKey: string;
  sign(about: Pick<KeySignature, "subject" | "digest" | "at" | "head">): KeySignature;
}

/** The private part of a new key pair, PKCS #8 (RFC 8410). */
export function newPrivatePart(): Buffer {
  return generateKeyPairSync("ed25519").privateKey.export({ format: "der", type: "pkcs8" });
}

/** Throws on bytes that are no private part. */
export function signerOf(privatePart: Buffer): Signer {
  const key = createPrivateKey({ key: privatePart, format: "der", type: "pkcs8" });
  const bytes = publicBytes(key);
  const keyId = idOfBytes(bytes);
  return {
    keyId,
    publicKey: bytes.toString("base64url"),
    sign(about) {
      const statement = { ...about, keyId, algorithm: KEY_ALGORITHM } as const;
      const signature = sign(null, Buffer.from(statementText(statement), "utf8"), key).toString("base64url");
      return { ...statement, signature };
    },
  };
}

const publicBytes = (key: KeyObject): Buffer =>
  createPublicKey(key).export({ format: "der", type: "spki" }).subarray(-32);
