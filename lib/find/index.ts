import "server-only";

export {
  BeadFilterSchema,
  filterFields,
  inchName,
  filterQuery,
  readFilter,
  UNKNOWN,
  type BeadFilter,
} from "./bead-filter";
export { recordedChoices, type Choices } from "./choices";
export { deleteFilter, listSavedFilters, saveFilter } from "./filters";
export { countBeads, countSome } from "./count-beads";
export { findPage, listedBeads, type ListedBead, type PageAt } from "./find-page";
export { newestBeads } from "./name-list";
export { openChanges } from "./open-changes";
export type { Scope } from "./scope";
export { beadSlices, wholePage, type WholeBead } from "./slices";
export { trendCounts, type GroupColumn } from "./trend-counts";
