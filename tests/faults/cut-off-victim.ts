/**
 * The one that is killed while it brings a folder up to date or a backup back, by the functions that a start and the command
 * use. Arguments: the data folder, what it does, the backup, a fault to be put in on purpose.
 */
import { cpSync, readdirSync } from "node:fs";
import path from "node:path";
import { restoreBackup } from "@/lib/backup";
import { migrateAside } from "@/lib/cli/migrate-aside.mjs";
import { applyMigrations } from "@/lib/cli/schema-engine.mjs";
import type { OneDeed, Told } from "./deeds";

const [folder = "", what = "", from = "", fault = ""] = process.argv.slice(2);
const deed = what as OneDeed;
const database = path.join(folder, "toeline.db");
const tell = (told: Told) => process.send?.(told);

async function migrate(): Promise<void> {
  if (fault === "in-place") await applyMigrations(`file:${database}`);
  else await migrateAside(folder);
}

async function restore(): Promise<void> {
  // The database first, and nothing aside: the folder looks whole before its photos are there.
  if (fault === "in-place")
    return void readdirSync(from)
      .sort((a, b) => Number(b === "toeline.db") - Number(a === "toeline.db"))
      .forEach((name) => cpSync(path.join(from, name), path.join(folder, name), { recursive: true }));
  const up = async (one: string) => void (await migrateAside(one));
  const done = await restoreBackup({ from, dataFolder: folder, now: new Date(), migrate: up });
  if (!done.ok) throw new Error(JSON.stringify(done.issues));
}

// Whoever kills may be stopped themselves: nobody goes on writing then.
process.once("disconnect", () => process.exit());
tell({ what: "ready" });
tell({ what: "began", deed });
await (deed === "migrate" ? migrate() : restore());
process.disconnect();
