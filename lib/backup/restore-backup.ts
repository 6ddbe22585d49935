import { mkdir, readdir, rename, rm } from "node:fs/promises";
import path from "node:path";
import { fail, issue, ok, type Result } from "@/lib/base";
import { openDb } from "@/lib/db";
import { writeSetting } from "@/lib/store";
import { copyDatabase, DATABASE } from "./copy-database";
import { copyFiles } from "./copy-files";
import { targetRefusal, type BackupIssue } from "./issue";
import { readManifest, type Manifest } from "./manifest";
import { lookAt } from "./make-backup";
import { isEmptyFolder } from "./target";

const ASIDE = "restoring";
/** Setting: from which backup, and when, this data folder was restored. */
export const RESTORED = "data.restored";

export interface Restored extends Manifest {
  /** The head of the log as it is in the restored folder before anything was added. */
  readonly head: string | null;
}

interface Asked {
  readonly from: string;
  /** Empty, or not there yet; nobody serves it. */
  readonly dataFolder: string;
  readonly now: Date;
  /** Brings the database to the newest migration. */
  readonly migrate: (folder: string) => Promise<void>;
}

/**
 * Brings a backup back into an empty data folder: copied aside, brought up to date, verified whole, and moved in, the
 * database last. Sign-ins of then are ended; the log says that it was restored.
 */
export async function restoreBackup(asked: Asked): Promise<Result<Restored, BackupIssue>> {
  const { from, dataFolder } = asked;
  const manifest = readManifest(from);
  if (manifest === null) return fail(issue("backup-missing", [], { folder: from }));
  const aside = path.join(dataFolder, ASIDE);
  try {
    await rm(aside, { recursive: true, force: true });
    if (!isEmptyFolder(dataFolder)) return fail(issue("data-folder-used", [], { folder: dataFolder }));
    await mkdir(aside, { recursive: true, mode: 0o700 });
    const looked = await bringAside(aside, asked, manifest);
    if (!looked.ok) return looked;
    await moveIn(aside, dataFolder);
    return ok({ ...manifest, head: looked.value.head });
  } catch (error) {
    return targetRefusal(dataFolder, error);
  } finally {
    await rm(aside, { recursive: true, force: true }).catch(() => undefined);
  }
}

async function bringAside(aside: string, { from, now, migrate }: Asked, { madeAt }: Manifest) {
  const database = await copyDatabase(from, aside);
  if (!database.ok) return database;
  await copyFiles({ from, to: aside, sharing: null });
  await migrate(aside);
  const looked = await lookAt(aside);
  if (!looked.ok) return looked;
  const db = openDb(`file:${path.join(aside, DATABASE)}`);
  try {
    // A sign-in that was ended since must not come alive again.
    await db.session.deleteMany();
    await writeSetting({ db, by: "system" }, RESTORED, { at: now.toISOString(), madeAt });
  } finally {
    await db.$disconnect();
  }
  return looked;
}

async function moveIn(aside: string, folder: string): Promise<void> {
  const names = await readdir(aside);
  for (const name of [...names.filter((one) => one !== DATABASE), DATABASE])
    await rename(path.join(aside, name), path.join(folder, name));
}
