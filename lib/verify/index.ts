import "server-only";

export { lastChecked, noteChecked } from "./checked";
export { verifyRecords } from "./verify";
