export {
  checkSignature,
  type Claimed,
  type KeyPort,
  type SignatureFault,
  type SignatureVerdict,
} from "./check-signature";
export {
  KeySignatureSchema,
  LogHeadSchema,
  statementText,
  type KeySignature,
  type LogHead,
} from "./key-signature";
export { fingerprint, KEY_ALGORITHM, PublicKeySchema, type PublicKey } from "./public-key";
export { faultWords, keyReason, standingSentence, standingTitle } from "./sentences";
export { mayNameSigner, standingOf, type KnownKey, type Standing } from "./standing";
