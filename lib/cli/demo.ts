/**
 * At each start: fills an empty data folder with the demo shop, once, enters in the log what is not there yet, and erases
 * beads that were deleted long enough ago; with names of sites, in each of them. A PostgreSQL begins empty: it is for a school or a works, not for looking around.
 */
import { writeSync } from "node:fs";
import { eraseDeletedBeads, sealViews } from "@/lib/beads";
import { dataDir, databaseUrl, engineOfUrl, openDb, photoPlace, type Db } from "@/lib/db";
import { clearCutOff, countOriginals, demoShop, FILLED, FilledSchema, fillWhole } from "@/lib/demo";
import { installationSigner, KeyElsewhere } from "@/lib/keys";
import { collectStrays, dataSentence } from "@/lib/mend";
import { eraseStrays, sweepIncoming } from "@/lib/photo";
import { inSite, loadSites } from "@/lib/sites";
import { adoptUnlogged, readSetting, writeSetting } from "@/lib/store";

/** Work on the database, which is closed again afterwards. */
async function withDb<T>(work: (db: Db) => Promise<T>): Promise<T> {
  const db = openDb(databaseUrl());
  try {
    return await work(db);
  } finally {
    await db.$disconnect();
  }
}

/** What keeps a folder from being served, found by what is to be there before anybody is; null: nothing does. */
async function fillIn(): Promise<string | null> {
  const folder = dataDir();
  const onServer = engineOfUrl(databaseUrl()) === "postgresql";
  const { filled, hasBeads } = await withDb(async (db) => ({
    filled: (await readSetting(db, FILLED, FilledSchema)) ?? false,
    hasBeads: (await db.bead.findFirst({ select: { id: true } })) !== null,
  }));
  const isNew = !onServer && !filled && !hasBeads;
  if (!onServer) await clearCutOff(folder, isNew);
  const originals = isNew ? await countOriginals(folder) : 0;
  if (originals > 0)
    return `The database in ${folder} is empty, and ${originals} photos lie beside it: so it is not the one they belong to, and nothing was filled in. Put toeline.db back from a backup; or, to begin anew, move the folder photos away; or name another data folder: TOELINE_DATA=/path npm start`;
  if (isNew) {
    console.log(`  Filling the empty database with the demo shop (${demoShop}) …`);
    await fillWhole(folder);
  }
  return withDb((db) => tidy(db, { folder, onServer, isKnown: isNew || filled }));
}

async function tidy(
  db: Db,
  { folder, onServer, isKnown }: { folder: string; onServer: boolean; isKnown: boolean },
): Promise<string | null> {
  const pen = { db, by: "system" };
  await adoptUnlogged(db);
  // Nobody serves this folder while it is set up, so no upload is on its way. Where others may, or photos lie in a bucket,
  // only what a crash left here a day ago is taken away.
  if (onServer || photoPlace() !== folder) await sweepIncoming(photoPlace());
  else {
    for (const one of await collectStrays(db, folder, new Date()))
      console.log(`  ${dataSentence(one, true)}`);
    await eraseStrays(folder, new Date());
  }
  if (!isKnown) await writeSetting(pen, FILLED, true);
  await sealViews(db, photoPlace());
  await eraseDeletedBeads(pen, photoPlace(), new Date());
  try {
    // With the first key everything of before comes under a signature.
    await installationSigner(pen, new Date());
  } catch (error) {
    if (!(error instanceof KeyElsewhere)) throw error;
    return error.message;
  }
  return null;
}

/** All sites of these names, one after the other; whatever fails in one is told of it alone, to whoever began this. */
async function fillSites(names: readonly string[]): Promise<void> {
  const refused: Record<string, string> = {};
  for (const site of loadSites().filter(({ name }) => names.includes(name))) {
    const why = await inSite(site, fillIn).catch((error: unknown) =>
      error instanceof Error ? error.message : String(error),
    );
    if (why !== null) refused[site.name] = why;
  }
  writeSync(3, JSON.stringify(refused));
}

const names = process.argv.slice(2);
const why = names.length > 0 ? await fillSites(names) : await fillIn();
if (why) {
  console.error(`  ${why}`);
  process.exit(3);
}
