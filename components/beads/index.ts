export { BeadCard } from "./bead-card";
export { ExportBar, PICK_FORM } from "./export-bar";
export { FilterPanel, type AskedFor, type FilterQuestion } from "./filter-panel";
export { ImportPanel } from "./import-panel";
export { SavedFilters } from "./saved-filters";
export { VerdictBadge, type VerdictWord } from "./verdict-badge";
