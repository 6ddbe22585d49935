import { existsSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { issue } from "@/lib/base";
import { engineOf, rowsOf, sql, type Db } from "@/lib/db";
import type { OwnDataIssue } from "./issue";

/** The file of this room that knows which database there is: its pages, its migrations, its triggers. */
export async function checkDatabaseFile(db: Db): Promise<readonly OwnDataIssue[]> {
  // Another database looks after its own pages.
  if (engineOf(db) !== "sqlite") return [];
  try {
    const rows = await rowsOf<{ integrity_check: string }>(db, sql`PRAGMA integrity_check(3)`);
    const said = rows.map((row) => row.integrity_check).filter((text) => text !== "ok");
    if (said.length > 0) return [issue("database-damaged", [], { reason: said.join("; ") })];
    const open = await openMigrations(db);
    if (open.length > 0) return open.map((name) => issue("migration-open" as const, [name], { name }));
    return (await missingTriggers(db)).map((name) => issue("trigger-missing" as const, [name], { name }));
  } catch (error) {
    const reason = error instanceof Error ? error.message.trim().split("\n").at(-1)! : String(error);
    return [issue("database-damaged", [], { reason })];
  }
}

const folder = () => path.join(/* turbopackIgnore: true */ process.cwd(), "prisma/migrations");
const migrations = (): readonly string[] =>
  readdirSync(folder(), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => name)
    .sort();

async function openMigrations(db: Db): Promise<readonly string[]> {
  const rows = await rowsOf<{ name: string }>(
    db,
    sql`SELECT "migration_name" AS "name" FROM "_prisma_migrations" WHERE "finished_at" IS NOT NULL`,
  );
  const done = new Set(rows.map(({ name }) => name));
  return migrations().filter((name) => !done.has(name));
}

/** Triggers that the migrations make and do not take away again, and that are not there. */
async function missingTriggers(db: Db): Promise<readonly string[]> {
  const rows = await rowsOf<{ name: string }>(
    db,
    sql`SELECT "name" FROM "sqlite_master" WHERE "type" = 'trigger'`,
  );
  const there = new Set(rows.map(({ name }) => name));
  const wanted = new Set<string>();
  for (const name of migrations()) {
    const file = path.join(folder(), name, "migration.sql");
    const text = existsSync(file) ? readFileSync(file, "utf8") : "";
    for (const [, act, trigger = ""] of text.matchAll(
      /\b(CREATE|DROP)\s+TRIGGER\s+(?:IF\s+(?:NOT\s+)?EXISTS\s+)?"?(\w+)"?/gi,
    ))
      if (act?.toUpperCase() === "CREATE") wanted.add(trigger);
      else wanted.delete(trigger);
  }
  return [...wanted].filter((name) => !there.has(name)).sort();
}
