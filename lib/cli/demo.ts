/**
 * At each start: fills an empty database with the demo shop, once, enters in the log what is not there yet, and erases
 * beads that were deleted long enough ago.
 */
import { z } from "zod";
import { eraseDeletedBeads, sealViews } from "@/lib/beads";
import { dataDir, databaseUrl, openDb } from "@/lib/db";
import { demoShop, fillDemoShop } from "@/lib/demo";
import { installationSigner } from "@/lib/keys";
import { sweepIncoming } from "@/lib/photo";
import { adoptUnlogged, readSetting, writeSetting, type Pen } from "@/lib/store";

const FILLED = "demo.filled";

const db = openDb(databaseUrl());
const pen: Pen = { db, by: "system" };
try {
  await sweepIncoming(dataDir());
  await adoptUnlogged(db);
  const filled = await readSetting(db, FILLED, z.boolean());
  if (!filled && (await db.bead.count()) === 0) {
    console.log(`  Filling the empty database with the demo shop (${demoShop}) …`);
    await fillDemoShop(pen, dataDir());
  }
  if (!filled) await writeSetting(pen, FILLED, true);
  await sealViews(db, dataDir());
  await eraseDeletedBeads(pen, dataDir(), new Date());
  // With the first key everything of before comes under a signature.
  await installationSigner(pen, new Date());
} finally {
  await db.$disconnect();
}
