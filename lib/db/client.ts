import path from "node:path";
import { PrismaBetterSqlite3 } from "@prisma/adapter-better-sqlite3";
import { PrismaClient } from "@/prisma/generated/client";
import { PrismaClient as PostgresClient } from "@/prisma/generated/postgresql/client";
import { currentSite } from "@/lib/sites";
import { dataDir, databaseUrl } from "./data-dir";
import { engineOfUrl, tellEngine } from "./engine";
import { postgresAdapter } from "./postgres-adapter";

/** The client of either database. Both are made from one schema, so that the type of one says what the other takes. */
export type Db = PrismaClient;
/** What a function gets inside `writeTogether(db, async (tx) => …)`. */
export type Tx = Omit<PrismaClient, "$connect" | "$disconnect" | "$on" | "$transaction" | "$extends">;

/** On globalThis as the client is: a bundle may hold this module more than once. */
const shared = globalThis as { toelineFolders?: WeakMap<Db, string> };
const folders = (shared.toelineFolders ??= new WeakMap<Db, string>());

/**
 * Opens a client on a given database: "file:…" is SQLite, "postgresql://…" PostgreSQL. The caller disconnects it.
 * `folder`: the data folder it belongs to; left out, the one a SQLite file lies in, else the server's own.
 */
export function openDb(url: string, folder?: string): Db {
  const engine = engineOfUrl(url);
  const client = engine === "sqlite" ? openSqlite(url) : openPostgres(url);
  tellEngine(client, engine);
  folders.set(client, folder ?? (engine === "sqlite" ? path.dirname(url.replace(/^file:/, "")) : dataDir()));
  return client;
}

const openSqlite = (url: string): Db =>
  new PrismaClient({ adapter: new PrismaBetterSqlite3({ url, timeout: 10_000 }) });

/** A writer may have to wait for those of other servers, so a transaction has more time than on a file of one's own. */
const openPostgres = (url: string): Db =>
  new PostgresClient({
    adapter: postgresAdapter(url),
    transactionOptions: { maxWait: 10_000, timeout: 20_000 },
  }) as unknown as Db;

/** The data folder a database belongs to, whatever TOELINE_DATA says meanwhile. Throws on a client not opened here. */
export function dataFolderOf(client: Db): string {
  const folder = folders.get(client);
  if (folder === undefined) throw new Error("this database was not opened by openDb");
  return folder;
}

const cache = globalThis as { toelineDbs?: Map<string, { readonly url: string; readonly db: Db }> };

/**
 * The server's one client, or the one of the site that is worked for, opened when it is first asked for. Kept on globalThis
 * so that the development server's reloads do not open a new one each.
 */
export function db(): Db {
  const url = databaseUrl();
  const name = currentSite()?.name ?? "";
  const kept = (cache.toelineDbs ??= new Map());
  const there = kept.get(name);
  if (there?.url === url) return there.db;
  const opened = openDb(url, dataDir());
  kept.set(name, { url, db: opened });
  return opened;
}
