import "server-only";

export { lastChecked, noteChecked } from "./checked";
export { verifyRecords, type Verification } from "./verify";
