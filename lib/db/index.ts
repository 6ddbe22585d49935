import "server-only";

export { dataFolderOf, db, openDb, type Db, type Tx } from "./client";
export { dataDir, databaseUrl } from "./data-dir";
export { dialect } from "./dialect";
export { change, column, joined, noSql, rowsOf, sql, type Sql } from "./sql";
