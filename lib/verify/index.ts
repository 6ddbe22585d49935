import "server-only";

export { verifyRecords } from "./verify";
