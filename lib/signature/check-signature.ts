import { statementText, type KeySignature } from "./key-signature";
import type { PublicKey } from "./public-key";

/** Arithmetic of the algorithm, brought by the caller, because every platform has its own. Bytes come as base64url. */
export interface KeyPort {
  /** SHA-256 of a public key's bytes, hexadecimal; null where the text holds no 32 bytes. */
  idOf(publicKey: string): string | null;
  /** Whether `signature` is that of the UTF-8 `text` by `publicKey` (RFC 8032, 5.1.7). False for anything malformed. */
  verifies(publicKey: string, text: string, signature: string): boolean;
}

/**
 * - `missing`: the text names a key, and no signature came with it
 * - `none`: neither a key named nor a signature
 * - `other-subject`, `other-digest`: it was given for something else
 * - `other-key`: by another key than the text names
 * - `key-unknown`: its key is not at hand
 * - `key-false`: what is called the key has another id
 * - `after-end`: dated after the key had ended
 * - `does-not-fit`: not by this key over this text
 */
export type SignatureFault =
  | "missing"
  | "none"
  | "other-subject"
  | "other-digest"
  | "other-key"
  | "key-unknown"
  | "key-false"
  | "after-end"
  | "does-not-fit";

export type SignatureVerdict =
  | { readonly fits: true; readonly key: PublicKey; readonly at: string }
  | { readonly fits: false; readonly why: SignatureFault };

/** What a signature should be of. `keyId`: the key that the signed text itself names; null: it names none. */
export interface Claimed {
  readonly subject: string;
  readonly digest: string;
  readonly keyId: string | null;
}

const no = (why: SignatureFault): SignatureVerdict => ({ fits: false, why });

/** Whether a signature is that of what it should be of, by one of `keys`. Says nothing of whose the key is. */
export function checkSignature(
  claimed: Claimed,
  signature: KeySignature | null,
  keys: ReadonlyMap<string, PublicKey>,
  port: KeyPort,
): SignatureVerdict {
  if (signature === null) return no(claimed.keyId === null ? "none" : "missing");
  if (signature.subject !== claimed.subject) return no("other-subject");
  if (signature.digest !== claimed.digest) return no("other-digest");
  if (claimed.keyId !== null && signature.keyId !== claimed.keyId) return no("other-key");
  const key = keys.get(signature.keyId);
  if (!key) return no("key-unknown");
  if (key.id !== signature.keyId || port.idOf(key.publicKey) !== key.id) return no("key-false");
  if (!port.verifies(key.publicKey, statementText(signature), signature.signature)) return no("does-not-fit");
  // Not asked for the beginning: a clock that was put right would make a good signature bad.
  return key.until === null || signature.at <= key.until
    ? { fits: true, key, at: signature.at }
    : no("after-end");
}
