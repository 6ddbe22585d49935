import "server-only";

export { confirmKey } from "./confirm-key";
export { KeyElsewhere, installationKeyId, installationSigner } from "./installation-key";
export { nodeKeys } from "./node-port";
export {
  endPaperCertificate,
  makePaperCertificate,
  paperCertificates,
  paperSigning,
  uploadPaperCertificate,
  type PaperCertificate,
  type PaperSigning,
} from "./paper-certificate";
export { paperWords } from "./paper-words";
export {
  endPersonKey,
  hasPersonKey,
  openPersonKey,
  preparePersonKey,
  writePersonKey,
  type OpenedKey,
} from "./person-keys";
export {
  countSignatures,
  keysById,
  keysOfHolders,
  listKeys,
  signatureSlices,
  signaturesOver,
  type StoredSignature,
} from "./read-keys";
export { headSentence, readHead, signedHead } from "./signed-head";
export { standings, type FrozenRow } from "./standing";
export { checkpoint, enterForeignKey, keepSignature, logHead } from "./write-keys";
