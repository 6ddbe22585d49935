/** `npm run -s backup -- TO`: copies the data folder while it serves, and verifies the copy. */
import { readdirSync, rmSync } from "node:fs";
import path from "node:path";
import {
  backupSentence,
  makeBackup,
  newestCopy,
  nightlyName,
  nightlyPlan,
  noteBackup,
  staleCopies,
} from "@/lib/backup";
import { fail, issue } from "@/lib/base";
import { dataDir, databaseUrl, engineOfUrl, isAllInFolder, openDb } from "@/lib/db";
import { takeLock } from "./data-lock.mjs";
import { needSite } from "./site-flag";

const use = `Copies database, photos and keys of the data folder (TOELINE_DATA, else ./data) while Toeline serves, and
verifies the copy: every page of the database, every photo, every record against the log.

  npm run -s backup -- /mnt/usb/toeline-2026-11-26     into a folder that is empty or not there yet
  npm run -s backup -- --nightly                       as it was switched on under "Backups", now

Where several sites are served: --site NAME. Bring it back into an empty folder with: npm run -s restore -- FOLDER
Exit code: 0 a good backup, 1 none.`;

needSite();
const given = process.argv.slice(2);
const nightly = given[0] === "--nightly";
if (given.length !== 1 || (given[0]?.startsWith("--") && !nightly)) {
  console.log(use);
  process.exit(given[0] === "--help" ? 0 : 2);
}

const namesIn = (folder: string): readonly string[] => {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
};

if (!isAllInFolder()) {
  console.error(
    "Database or photos of this Toeline lie elsewhere: back up the PostgreSQL and the bucket by their own means, and the two keys in the data folder.",
  );
  process.exit(2);
}

process.umask(0o077);
const db = openDb(databaseUrl());
const folder = dataDir();
const now = new Date();

/** Where to, and how many copies stay there beside it; null: no nightly backup is switched on. */
async function asked() {
  if (!nightly) return { target: path.resolve(given[0]!), into: null, keep: 0, sharing: null };
  const plan = await nightlyPlan(db);
  if (!plan) return null;
  const newest = newestCopy(namesIn(plan.folder));
  const sharing = newest && path.join(plan.folder, newest);
  return { target: path.join(plan.folder, nightlyName(now)), into: plan.folder, keep: plan.keep, sharing };
}

async function run(): Promise<number> {
  const where = await asked();
  if (where === null) {
    console.error("No nightly backup is switched on. Switch it on under “Backups”.");
    return 1;
  }
  const lock = await takeLock(folder, "backing-up.lock");
  const { target, into, keep, sharing } = where;
  const made =
    lock === null
      ? fail(issue("backup-running"))
      : engineOfUrl(databaseUrl()) !== "sqlite"
        ? fail(issue("source-elsewhere"))
        : await makeBackup({ dataFolder: folder, target, now, sharing });
  lock?.();
  const said = made.ok
    ? `${made.value.files} files and the database lie in ${target}, verified whole (${made.value.photos} photos). Newest log entry: ${made.value.head ?? "none yet"}`
    : made.issues.map(backupSentence).join(" ");
  await noteBackup({ db, by: "system" }, said, made.ok ? target : null, now);
  (made.ok ? console.log : console.error)(said);
  // Only after a good one: a bad night takes no older copy away.
  if (made.ok && into !== null)
    for (const old of staleCopies(namesIn(into), keep)) rmSync(path.join(into, old), { recursive: true });
  return made.ok ? 0 : 1;
}

try {
  process.exitCode = await run();
} catch (error) {
  console.error(
    `The backup could not be made: ${error instanceof Error ? error.message.trim().split("\n").at(-1) : String(error)}`,
  );
  process.exitCode = 1;
} finally {
  await db.$disconnect();
}
