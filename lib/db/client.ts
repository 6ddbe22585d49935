import { PrismaBetterSqlite3 } from "@prisma/adapter-better-sqlite3";
import { PrismaClient } from "@/prisma/generated/client";
import { databaseUrl } from "./data-dir";

export type Db = PrismaClient;
/** What a function gets inside `db.$transaction(async (tx) => …)`. */
export type Tx = Omit<PrismaClient, "$connect" | "$disconnect" | "$on" | "$transaction" | "$extends">;

/** Opens a client on a given database; the caller disconnects it. */
export function openDb(url: string): Db {
  return new PrismaClient({ adapter: new PrismaBetterSqlite3({ url, timeout: 10_000 }) });
}

const cache = globalThis as { toelineDb?: { url: string; db: Db } };

/** The server's one client. Kept on globalThis so that the development server's reloads do not open a new one each. */
export function db(): Db {
  const url = databaseUrl();
  if (cache.toelineDb?.url !== url) cache.toelineDb = { url, db: openDb(url) };
  return cache.toelineDb.db;
}
