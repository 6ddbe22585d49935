import "server-only";

export { checkData } from "./check-data";
export { dataSentence } from "./issue";
export { collectStrays, mendData } from "./mend-data";
