import { mkdir, rename, rm, stat, utimes } from "node:fs/promises";
import path from "node:path";
import { syncFolder } from "./disk";
import { namesIn } from "./inventory";
import { oneByOne } from "./one-by-one";
import { originalPath, photoFolders, viewFolder } from "./paths";

const DAY_MS = 24 * 3600 * 1000;
/** A photo that a crash orphaned may be the only one of a bead; so long somebody can look for it. */
export const STRAYS_KEPT_DAYS = 30;

/**
 * Puts an original aside that nothing names; its derived pictures go, because they can be made again. Call it only where
 * nobody serves this folder: an upload on its way is named by nothing yet.
 */
export function setAside(dataDir: string, sha256: string, now: Date): Promise<void> {
  return oneByOne(sha256, async () => {
    const original = originalPath(dataDir, sha256);
    if (original === null) return;
    const { strays, originals } = photoFolders(dataDir);
    await mkdir(strays, { recursive: true, mode: 0o700 });
    // From when on it lies aside: that is what its days are counted from.
    await utimes(original, now, now);
    await rename(original, path.join(strays, sha256));
    await syncFolder(strays);
    await syncFolder(originals);
    await dropViews(dataDir, sha256);
  });
}

/** Takes away derived pictures that belong to no original. */
export async function dropViews(dataDir: string, sha256: string): Promise<void> {
  await rm(viewFolder(dataDir, sha256), { recursive: true, force: true });
}

/** Erases what was put aside long enough ago; how many. */
export async function eraseStrays(dataDir: string, now: Date): Promise<number> {
  const { strays } = photoFolders(dataDir);
  let gone = 0;
  for (const name of await namesIn(strays)) {
    const file = path.join(strays, name);
    const { mtimeMs } = await stat(file);
    if (now.getTime() - mtimeMs < STRAYS_KEPT_DAYS * DAY_MS) continue;
    await rm(file, { force: true });
    gone += 1;
  }
  return gone;
}
