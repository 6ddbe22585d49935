import { existsSync } from "node:fs";
import { copyFile, mkdir, readdir, rename, rm } from "node:fs/promises";
import path from "node:path";
import { openDb } from "@/lib/db";
import { writeSetting } from "@/lib/store";
import { z } from "zod";
import { fillDemoShop } from "./fill-shop";

/** Setting: this database was filled once, or was never to be; deleting the demo beads does not bring them back. */
export const FILLED = "demo.filled";
export const FilledSchema = z.boolean();

const DATABASE = "toeline.db";
const asideOf = (folder: string): string => path.join(folder, "filling");

/** How many originals lie in the photo folder. */
export async function countOriginals(folder: string): Promise<number> {
  return (await readdir(path.join(folder, "photos", "originals")).catch(() => [])).length;
}

/**
 * Clears what a filling left that was cut off. It had begun on a folder without photos, and nobody has used that since: so
 * while its database still waits aside and the one in use is empty, the photos are the filling's own.
 */
export async function clearCutOff(folder: string, isEmpty: boolean): Promise<void> {
  if (!existsSync(asideOf(folder))) return;
  if (isEmpty && existsSync(path.join(asideOf(folder), DATABASE)))
    for (const name of ["originals", "views", "incoming"])
      await rm(path.join(folder, "photos", name), { recursive: true, force: true });
  await rm(asideOf(folder), { recursive: true, force: true });
}

/**
 * Fills an empty data folder with the demo shop, whole or not at all: aside first, then photos, and the database last, by one
 * rename. Nobody may have its database open.
 */
export async function fillWhole(folder: string, fill = fillDemoShop): Promise<void> {
  const aside = asideOf(folder);
  await mkdir(aside, { recursive: true });
  await copyFile(path.join(folder, DATABASE), path.join(aside, DATABASE));
  const db = openDb(`file:${path.join(aside, DATABASE)}`);
  try {
    const pen = { db, by: "system" };
    await fill(pen, aside);
    await writeSetting(pen, FILLED, true);
    // Everything into the one file that is renamed.
    await db.$queryRawUnsafe("PRAGMA wal_checkpoint(TRUNCATE)");
  } finally {
    await db.$disconnect();
  }
  await mkdir(path.join(folder, "photos"), { recursive: true });
  for (const name of await readdir(path.join(aside, "photos")).catch(() => [])) {
    const place = path.join(folder, "photos", name);
    await rm(place, { recursive: true, force: true });
    await rename(path.join(aside, "photos", name), place);
  }
  // What else it left, such as the key that signed what was filled in, belongs to the database that knows it.
  for (const name of await readdir(aside))
    if (name !== "photos" && !name.startsWith(DATABASE))
      await rename(path.join(aside, name), path.join(folder, name));
  for (const tail of ["-wal", "-shm"]) await rm(path.join(folder, `${DATABASE}${tail}`), { force: true });
  await rename(path.join(aside, DATABASE), path.join(folder, DATABASE));
  await rm(aside, { recursive: true, force: true });
}
