export { CollisionNotice } from "./collision-notice";
export { SaveBar } from "./save-bar";
export { isCollision, type Save, type SaveState, type Saved, type Stored } from "./saver";
export { sendPhoto } from "./send-photo";
export { useEdited, type Editing, type SavedAndSaid } from "./use-edited";
export { useRevision, type Revision } from "./use-revision";
