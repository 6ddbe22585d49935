export { StudyResult } from "./study-result";
export { StudySheet } from "./study-sheet";
