export { CollisionNotice } from "./collision-notice";
export { SaveBar } from "./save-bar";
export { retryAfterMs } from "./retry";
export {
  isAway,
  isCollision,
  refusalOf,
  Saver,
  type Held,
  type Save,
  type Saved,
  type Stored,
} from "./saver";
export { sendPhoto, unfitPhoto } from "./send-photo";
export { useEdited, type Editing, type SavedAndSaid } from "./use-edited";
export { flushAll, useRevision, type Revision } from "./use-revision";
