import "server-only";

export {
  BeadFilterSchema,
  filterFields,
  filterQuery,
  readFilter,
  UNKNOWN,
  type BeadFilter,
} from "./bead-filter";
export { deleteFilter, listSavedFilters, saveFilter } from "./filters";
export { findBeads, type FoundBeads } from "./find-beads";
export { type ObservedBead } from "./observations";
