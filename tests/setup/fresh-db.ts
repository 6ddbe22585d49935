import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll } from "vitest";
import { openDb, type Db } from "@/lib/db";
import type { Pen } from "@/lib/store";
import { layMigrated } from "./migrated";
import { postgresToTest, newPostgresDatabase } from "./postgres-database";

export interface FreshDb {
  readonly db: Db;
  /** Writes as the tests' own hand. */
  readonly pen: Pen;
  readonly folder: string;
  readonly url: string;
}

/**
 * A database with every migration applied, and a data folder: a SQLite file in it, or one of the PostgreSQL this run was
 * told of. The caller disconnects it.
 */
export async function freshDb(): Promise<FreshDb> {
  const folder = mkdtempSync(path.join(tmpdir(), "toeline-db-"));
  const file = path.join(folder, "toeline.db");
  const url = postgresToTest() ? await newPostgresDatabase() : `file:${file}`;
  if (!postgresToTest()) await layMigrated(file);
  const db = openDb(url, folder);
  // Nothing here outlives the machine, so nobody waits for its disk.
  if (!postgresToTest()) await db.$executeRawUnsafe("PRAGMA synchronous = OFF");
  return { db, pen: { db, by: "test" }, folder, url };
}

/** What a test asks as the server would is asked of this data folder, until the file ends. */
export function serveFrom(folder: string): void {
  process.env["TOELINE_DATA"] = folder;
}

/** Call at the top of a test file: a real database with every migration applied, gone when the file ends. */
export function useFreshDb(): () => FreshDb {
  let fresh: FreshDb | null = null;
  const before = process.env["TOELINE_DATA"];
  beforeAll(async () => {
    fresh = await freshDb();
    // What a test asks as the server would, from the data folder it names, is asked of this one.
    if (postgresToTest()) process.env["DATABASE_URL"] = fresh.url;
  });
  afterAll(async () => {
    // The next file of this process is told nothing of a folder that is gone.
    if (before === undefined) delete process.env["TOELINE_DATA"];
    else process.env["TOELINE_DATA"] = before;
    await fresh?.db.$disconnect();
    if (fresh) rmSync(fresh.folder, { recursive: true, force: true });
  });
  return () => {
    if (!fresh) throw new Error("the database is there only while tests run");
    return fresh;
  };
}
