import { readdirSync } from "node:fs";
import path from "node:path";
import { issue } from "@/lib/base";
import { staleBeads, unreadableBeads } from "@/lib/beads";
import type { Db } from "@/lib/db";
import { photoInventory, readStoredPhoto } from "@/lib/photo";
import { verifyRecords } from "@/lib/verify";
import { checkDatabaseFile } from "./database-file";
import type { DataIssue, OwnDataIssue } from "./issue";
import { namedPhotos } from "./named-photos";

/** Folders that a start, a filling or a restoring makes for itself, and that stay only where it was cut off. */
export const ASIDE_FOLDERS = ["filling", "restoring", "migrating"] as const;

/**
 * Everything in a data folder that does not belong together: what the verifier finds, and files and rows beside it. Reads
 * only. While somebody serves the folder an upload on its way looks like a stray; `isServed` leaves such findings away.
 */
export async function checkData(
  db: Db,
  folder: string,
  { isServed }: { readonly isServed: boolean },
): Promise<readonly DataIssue[]> {
  const file = await checkDatabaseFile(db);
  // With pages damaged or columns missing no further question has an answer to be relied on.
  if (file.some(({ code }) => code !== "trigger-missing")) return file;
  const { findings } = await verifyRecords(db, folder);
  return [
    ...file,
    ...findings,
    ...(isServed ? [] : await unfinished(db, folder)),
    ...(await notedBeside(db, folder)),
    ...(await rowsToDo(db)),
  ];
}

/** What a crash leaves: files that nothing names, uploads and folders that were not finished. */
export async function unfinished(db: Db, folder: string): Promise<readonly OwnDataIssue[]> {
  const { originals, views, incoming, odd } = await photoInventory(folder);
  const named = await namedPhotos(db);
  const there = new Set(originals);
  const stray = originals.filter((sha256) => !named.has(sha256));
  const aside = readdirSync(folder).filter((name) => ASIDE_FOLDERS.some((one) => one === name));
  return [
    ...stray.map((sha256) => issue("stray-original" as const, [sha256], { sha256 })),
    ...views
      .filter((sha256) => !there.has(sha256) && !named.has(sha256))
      .map((sha256) => issue("stray-views" as const, [sha256], { sha256 })),
    ...odd.map((name) => issue("odd-file" as const, [name], { name })),
    ...(incoming.length > 0 ? [issue("left-uploads" as const, [], { count: incoming.length })] : []),
    ...aside.map((name) => issue("left-aside" as const, [name], { name: path.join(folder, name) })),
  ];
}

/** meta.json of each photo against the bead's row: what is noted there is shown and relied on when the bytes come again. */
async function notedBeside(db: Db, folder: string): Promise<readonly OwnDataIssue[]> {
  const rows = await db.photo.findMany({
    select: { sha256: true, format: true, widthPx: true, heightPx: true, bead: { select: { number: true } } },
    orderBy: { id: "asc" },
  });
  const found = new Map<string, OwnDataIssue>();
  for (const { sha256, format, widthPx, heightPx, bead } of rows) {
    const meta = await readStoredPhoto(folder, sha256).catch(() => null);
    const fits = meta?.format === format && meta.widthPx === widthPx && meta.heightPx === heightPx;
    if (!fits) found.set(sha256, issue("meta-differs", [sha256], { sha256, beads: `bead ${bead.number}` }));
  }
  return [...found.values()];
}

async function rowsToDo(db: Db): Promise<readonly OwnDataIssue[]> {
  const stale = await staleBeads(db);
  return [
    ...(await unreadableBeads(db)).map(({ number }) =>
      issue("row-unreadable" as const, [number], { number }),
    ),
    ...(stale > 0 ? [issue("facts-stale" as const, [], { count: stale })] : []),
  ];
}
