import "server-only";

export { checkData } from "./check-data";
export { dataSentence, canMend, type DataIssue } from "./issue";
export { collectStrays, mendData } from "./mend-data";
