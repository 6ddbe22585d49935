import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readdirSync,
  renameSync,
  rmSync,
} from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";

const migrations = fileURLToPath(new URL("../../prisma/migrations", import.meta.url));
const DATABASE = "toeline.db";

/** Waits until the disk has a file, or the names in a folder. */
function sync(file) {
  const handle = openSync(file, "r");
  fsyncSync(handle);
  closeSync(handle);
}

/** Whether every migration there is was made to this database, whole. */
async function isUpToDate(file) {
  if (!existsSync(file)) return false;
  const { default: Database } = await import("better-sqlite3");
  const db = new Database(file);
  try {
    const rows = db.prepare("SELECT migration_name, finished_at FROM _prisma_migrations").all();
    const known = new Set(readdirSync(migrations));
    const newer = rows.find(({ migration_name: name }) => !known.has(name));
    if (newer) throw new Error(`NEWER: ${newer.migration_name}`);
    const done = new Set(
      rows.filter(({ finished_at }) => finished_at !== null).map((row) => row.migration_name),
    );
    const wanted = readdirSync(migrations, { withFileTypes: true }).filter((entry) => entry.isDirectory());
    return done.size === rows.length && wanted.every(({ name }) => done.has(name));
  } catch (error) {
    if (/no such table/.test(String(error?.message))) return false;
    throw error;
  } finally {
    db.close();
  }
}

/** A copy of the database as it is, whatever a crash left open in it. */
async function copyDatabase(from, to) {
  const { default: Database } = await import("better-sqlite3");
  const db = new Database(from, { fileMustExist: true });
  try {
    await db.backup(to, { progress: () => 0x7fff_fff0 });
  } finally {
    db.close();
  }
}

/**
 * Brings the database of a data folder to the newest migration, whole or not at all: a migration that is cut off half-way
 * leaves what neither version can read. So it is made to a copy, which takes the database's place by one rename. Nobody may
 * serve the folder. Says which migrations were applied.
 */
export async function migrateAside(folder) {
  const file = path.join(folder, DATABASE);
  if (await isUpToDate(file)) return [];
  const { applyMigrations } = await import("./schema-engine.mjs");
  const aside = path.join(folder, "migrating");
  rmSync(aside, { recursive: true, force: true });
  mkdirSync(aside, { mode: 0o700 });
  const copy = path.join(aside, DATABASE);
  try {
    if (existsSync(file)) await copyDatabase(file, copy);
    const applied = await applyMigrations(`file:${copy}`);
    sync(copy);
    renameSync(copy, file);
    sync(folder);
    return applied;
  } finally {
    rmSync(aside, { recursive: true, force: true });
  }
}
