import "server-only";

export { dataFolderOf, db, openDb, type Db, type Tx } from "./client";
export { dataDir, databaseUrl, isAllInFolder, photoPlace } from "./data-dir";
export { danglingRows, dialect, forgetFreed } from "./dialect";
export { engineOf, engineOfUrl } from "./engine";
export { change, column, joined, noSql, rowsOf, sql, type Sql } from "./sql";
export { withoutTriggers } from "./without-triggers";
export { writeTogether } from "./write-together";
