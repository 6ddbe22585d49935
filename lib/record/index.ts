import "server-only";

export {
  addPhoto,
  createBead,
  deleteBead,
  getBead,
  listBeads,
  removePhoto,
  saveBead,
  type NewPhoto,
} from "./beads";
export { readSetting, writeSetting } from "./preferences";
export { recordSentence, recordSentences } from "./sentences";
export { deleteSetup, lastSetup, listSavedSetups, saveSetup, type SavedSetupRecord } from "./setups";
export { resetShopCounts, shopCounts } from "./shop-counts";
export type { BeadRecord, PhotoRecord, RecordIssue } from "./types";
