export { TrialForm } from "./trial-form";
export { TrialNote, type SeriesNote } from "./trial-note";
export { TrialView } from "./trial-view";
