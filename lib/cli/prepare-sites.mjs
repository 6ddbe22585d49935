/**
 * Sets up every site that is served here. One that cannot be set up stays shut, with the sentence that says why, and holds up
 * none of the others.
 */
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync } from "node:fs";
import path from "node:path";
import { closeToOthers } from "./close-to-others.mjs";
import { countOwners } from "./count-owners.mjs";
import { inUse, lockForStart } from "./data-lock.mjs";
import { migrate, PrepareError, root } from "./prepare.mjs";
import { engineOfUrl } from "./schemas.mjs";

const noOwner = (name) =>
  `nobody there may open accounts yet. Open the owner's: npm run -s account -- --site ${name} --role owner --name "Your name" --sign-in yourname, then start again.`;

/**
 * Makes the folder that a site's backups go into: under the data folder always, elsewhere where its disk is there. What cannot
 * be made is said by the first backup.
 */
function makeBackupFolder({ folder, backups }) {
  const around = path.dirname(backups);
  const isOurs = around === path.resolve(folder, "../../backups");
  if (isOurs || existsSync(around)) mkdirSync(backups, { recursive: true, mode: 0o700 });
}

async function prepareSite(site) {
  const { name, folder, database } = site;
  const url = engineOfUrl(database) === "postgresql" ? database : null;
  // A file has one server; a PostgreSQL has as many as it likes.
  if (url === null && (await lockForStart(folder)) === null) throw new PrepareError(inUse(folder));
  await migrate(folder, url);
  closeToOthers(folder);
  makeBackupFolder(site);
  if ((await countOwners(folder, url)) === 0) throw new PrepareError(noOwner(name));
}

/** Sets the sites up; of those that stay shut the name and why. */
export async function prepareSites(sites) {
  const shut = new Map();
  for (const site of sites) {
    try {
      await prepareSite(site);
    } catch (error) {
      shut.set(site.name, error instanceof Error ? error.message : String(error));
    }
  }
  return shut;
}

/** Fills in what is to be there before anybody is served, of all these sites in one process; whom it refuses, and why. */
export function fillSites(names) {
  if (names.length === 0) return new Map();
  const { status, error, output } = spawnSync(
    process.execPath,
    ["--conditions=react-server", "--import", "tsx", "lib/cli/demo.ts", ...names],
    { cwd: root, stdio: ["ignore", "inherit", "inherit", "pipe"], encoding: "utf8" },
  );
  if (error || status !== 0)
    throw new PrepareError("The sites could not be filled in; the lines above say why.");
  return new Map(Object.entries(JSON.parse(output[3] || "{}")));
}
