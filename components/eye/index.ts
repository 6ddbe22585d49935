export { EyeLooking } from "./eye-looking";
export { EyeResult } from "./eye-result";
export { KindTable } from "./kind-table";
export { StudyTable } from "./study-table";
