/** `npm run -s restore -- FROM`: brings a backup into an empty data folder, verified whole before anybody serves it. */
import path from "node:path";
import { backupSentence, restoreBackup } from "@/lib/backup";
import { fail, issue } from "@/lib/base";
import { dataDir } from "@/lib/db";
import { closeToOthers } from "./close-to-others.mjs";
import { lockForStart } from "./data-lock.mjs";
import { migrate } from "./prepare.mjs";
import { needSite } from "./site-flag";

const use = `Brings a backup back into the data folder (TOELINE_DATA, else ./data), which must be empty: copied, brought up
to date, verified whole, and only then there. Everybody signs in again; tokens and passphrases are those of the backup.

  TOELINE_DATA=/path/to/new npm run -s restore -- /mnt/usb/toeline-2026-11-26

Where several sites are served: --site NAME.
Exit code: 0 restored, 1 not, and the data folder is as empty as before.`;

needSite();
const [from, ...more] = process.argv.slice(2);
if (from === undefined || more.length > 0 || from.startsWith("--")) {
  console.log(use);
  process.exit(from === "--help" ? 0 : 2);
}

const dataFolder = dataDir();
process.umask(0o077);
const lock = await lockForStart(dataFolder);
const restored =
  lock === null
    ? fail(issue("data-folder-served", [], { folder: dataFolder }))
    : await restoreBackup({ from: path.resolve(from), dataFolder, now: new Date(), migrate });
if (restored.ok) {
  closeToOthers(dataFolder);
  const { madeAt, head, photos } = restored.value;
  console.log(
    `Restored into ${dataFolder}: the backup of ${madeAt.slice(0, 16).replace("T", " ")} UTC, ${photos} photos, everything verified. Newest log entry then: ${head ?? "none yet"}. What was done since is not in it; a head of the log kept elsewhere says how much that is.`,
  );
} else {
  for (const one of restored.issues) console.error(backupSentence(one));
  process.exitCode = 1;
}
lock?.();
