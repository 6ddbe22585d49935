import "server-only";

export { photoIssueStatus, type PhotoIssue } from "./issue";
export { deskFiles, viewType } from "./paths";
export { receivePhoto } from "./receive-photo";
export { photoSentence } from "./sentences";
export { photoStore } from "./store";
export type { ByteRange, PhotoFile } from "./store-types";
export { readStoredPhoto } from "./stored-photo";
export { sweepIncoming } from "./sweep";
export { pagePicture } from "./page-picture";
export { photoInventory } from "./inventory";
export { remakeViews } from "./remake-views";
export { roomLeft } from "./room-left";
export { dropViews, eraseStrays, setAside } from "./strays";
export { photoSizes, type PhotoSize, type ReceivedPhoto } from "./types";
export { discardPhoto, holdPhoto } from "./discard-photo";
export { verifyOriginal } from "./verify-original";
export { viewDigests, viewSeals } from "./view-seals";
