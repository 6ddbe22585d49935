import { mkdir, rename, rm } from "node:fs/promises";
import path from "node:path";
import { fail, issue, ok, type Result } from "@/lib/base";
import { openDb } from "@/lib/db";
import { ledgerSentence } from "@/lib/ledger";
import { verifyRecords } from "@/lib/verify";
import { copyDatabase, DATABASE } from "./copy-database";
import { copyFiles } from "./copy-files";
import { targetRefusal, type BackupIssue } from "./issue";
import { writeManifest, type Manifest } from "./manifest";
import { isEmptyFolder, targetIssues } from "./target";

export interface MadeBackup extends Manifest {
  readonly folder: string;
}

interface Asked {
  readonly dataFolder: string;
  /** A folder that is empty or not there yet. */
  readonly target: string;
  readonly now: Date;
  /** An earlier backup on the same disk: photos that lie there already are shared with it, not written again. */
  readonly sharing?: string | null;
}

/**
 * Copies a data folder while it serves, and verifies the copy: the database first, then photos (what a row names was on the
 * disk before the row), then everything in the copy against its log. The target appears whole or not at all.
 */
export async function makeBackup(asked: Asked): Promise<Result<MadeBackup, BackupIssue>> {
  const { dataFolder, target } = asked;
  const wrong = targetIssues(dataFolder, target);
  if (wrong.length > 0) return fail(...wrong);
  const aside = `${target}.part`;
  try {
    if (!isEmptyFolder(target)) return fail(issue("target-used", [], { folder: target }));
    const made = await copyTo(aside, asked);
    if (!made.ok) return made;
    await rm(target, { recursive: true, force: true });
    await rename(aside, target);
    return ok({ ...made.value, folder: target });
  } catch (error) {
    return targetRefusal(target, error);
  } finally {
    await rm(aside, { recursive: true, force: true }).catch(() => undefined);
  }
}

async function copyTo(aside: string, asked: Asked): Promise<Result<Manifest, BackupIssue>> {
  const { dataFolder, now, sharing = null } = asked;
  // What a killed backup left under this name.
  await rm(aside, { recursive: true, force: true });
  // Not the folders above it: a disk that is not plugged in must not become a folder on this one.
  await mkdir(aside, { mode: 0o700 });
  const database = await copyDatabase(dataFolder, aside);
  if (!database.ok) return database;
  const files = await copyFiles({ from: dataFolder, to: aside, sharing });
  const looked = await lookAt(aside);
  // A file shared with an earlier copy may have gone bad there since: then everything is written anew.
  if (!looked.ok) return sharing === null ? looked : copyTo(aside, { ...asked, sharing: null });
  const manifest: Manifest = { format: 1, madeAt: now.toISOString(), files, ...looked.value };
  await writeManifest(aside, manifest);
  return ok(manifest);
}

/** Verifies everything in a copied data folder. */
export async function lookAt(
  folder: string,
): Promise<Result<{ readonly head: string | null; readonly photos: number }, BackupIssue>> {
  const db = openDb(`file:${path.join(folder, DATABASE)}`);
  try {
    const { findings, head, entries, photos } = await verifyRecords(db, folder);
    const [first] = findings;
    if (first)
      return fail(
        issue("copy-does-not-fit", [], { findings: findings.length, first: ledgerSentence(first) }),
      );
    return ok({ head: head && `${entries}:${head}`, photos });
  } finally {
    await db.$disconnect();
  }
}
