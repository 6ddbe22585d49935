export { StudyChart } from "./study-chart";
export { StudyResult } from "./study-result";
export { StudySheet } from "./study-sheet";
