import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll } from "vitest";
import { openDb, type Db } from "@/lib/db";
// The engine is plain JavaScript, because the start script needs it before anything is compiled.
import { applyMigrations } from "@/lib/cli/schema-engine.mjs";

/** A real SQLite file with every migration applied, gone when the test file ends. */
export async function freshDb(): Promise<{ db: Db; folder: string; url: string }> {
  const folder = mkdtempSync(path.join(tmpdir(), "toeline-db-"));
  const url = `file:${path.join(folder, "toeline.db")}`;
  await applyMigrations(url);
  const db = openDb(url);
  afterAll(async () => {
    await db.$disconnect();
    rmSync(folder, { recursive: true, force: true });
  });
  return { db, folder, url };
}
