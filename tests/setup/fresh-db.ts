import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll } from "vitest";
import { openDb, type Db } from "@/lib/db";
import type { Pen } from "@/lib/store";
import { layMigrated } from "./migrated";

export interface FreshDb {
  readonly db: Db;
  /** Writes as the tests' own hand. */
  readonly pen: Pen;
  readonly folder: string;
  readonly url: string;
}

/** Call at the top of a test file: a real SQLite file with every migration applied, gone when the file ends. */
export function useFreshDb(): () => FreshDb {
  let fresh: FreshDb | null = null;
  beforeAll(async () => {
    const folder = mkdtempSync(path.join(tmpdir(), "toeline-db-"));
    const file = path.join(folder, "toeline.db");
    const url = `file:${file}`;
    await layMigrated(file);
    const db = openDb(url);
    fresh = { db, pen: { db, by: "test" }, folder, url };
  });
  afterAll(async () => {
    await fresh?.db.$disconnect();
    if (fresh) rmSync(fresh.folder, { recursive: true, force: true });
  });
  return () => {
    if (!fresh) throw new Error("the database is there only while tests run");
    return fresh;
  };
}
