import "server-only";

export { db, openDb, type Db, type Tx } from "./client";
export { dataDir, databaseUrl } from "./data-dir";
