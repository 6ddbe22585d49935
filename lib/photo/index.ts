import "server-only";

export { photoIssueCodes, photoIssueStatus, type PhotoIssue, type PhotoIssueCode } from "./issue";
export { isSha256, originalPath, viewPath, viewType } from "./paths";
export { receivePhoto, type ReceiveOptions } from "./receive-photo";
export { photoSentence, photoSentences } from "./sentences";
export { readStoredPhoto } from "./stored-photo";
export { removeIncoming, sweepIncoming } from "./sweep";
export {
  photoFormats,
  photoSizes,
  type PhotoFormat,
  type PhotoSize,
  type ReceivedPhoto,
  type StoredPhoto,
} from "./types";
export { discardPhoto, holdPhoto } from "./discard-photo";
export { verifyOriginal } from "./verify-original";
export { viewDigests, viewSeals } from "./view-seals";
