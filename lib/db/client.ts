import path from "node:path";
import { PrismaBetterSqlite3 } from "@prisma/adapter-better-sqlite3";
import { PrismaClient } from "@/prisma/generated/client";
import { databaseUrl } from "./data-dir";

export type Db = PrismaClient;
/** What a function gets inside `db.$transaction(async (tx) => …)`. */
export type Tx = Omit<PrismaClient, "$connect" | "$disconnect" | "$on" | "$transaction" | "$extends">;

/** On globalThis as the client is: a bundle may hold this module more than once. */
const shared = globalThis as { toelineFolders?: WeakMap<Db, string> };
const folders = (shared.toelineFolders ??= new WeakMap<Db, string>());

/** Opens a client on a given database; the caller disconnects it. */
export function openDb(url: string): Db {
  const client = new PrismaClient({ adapter: new PrismaBetterSqlite3({ url, timeout: 10_000 }) });
  folders.set(client, path.dirname(url.replace(/^file:/, "")));
  return client;
}

/** The data folder a database lies in, whatever TOELINE_DATA says meanwhile. Throws on a client not opened here. */
export function dataFolderOf(client: Db): string {
  const folder = folders.get(client);
  if (folder === undefined) throw new Error("this database was not opened by openDb");
  return folder;
}

const cache = globalThis as { toelineDb?: { url: string; db: Db } };

/** The server's one client. Kept on globalThis so that the development server's reloads do not open a new one each. */
export function db(): Db {
  const url = databaseUrl();
  if (cache.toelineDb?.url !== url) cache.toelineDb = { url, db: openDb(url) };
  return cache.toelineDb.db;
}
