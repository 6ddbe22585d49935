import { createReadStream } from "node:fs";
import { chmod, mkdir, readFile, rename, rm, stat } from "node:fs/promises";
import path from "node:path";
import { invariant } from "@/lib/base";
import { errorCode, syncFolder } from "./disk";
import { isSha256, META_FILE, originalPath, photoFolders, viewFile, viewFolder } from "./paths";
import type { OnDesk, PhotoFile, PhotoStore } from "./store-types";

/** The photos of one data folder, on the file system on which uploads arrive. */
export function folderStore(dataDir: string): PhotoStore {
  const pathOf = (sha256: string, file: PhotoFile): string | null => {
    if (!isSha256(sha256)) return null;
    if (file === "original") return originalPath(dataDir, sha256);
    return path.join(viewFolder(dataDir, sha256), file === "meta" ? META_FILE : viewFile(file));
  };
  const size = async (sha256: string, file: PhotoFile): Promise<number | null> => {
    const name = pathOf(sha256, file);
    return name === null
      ? null
      : orAbsent(stat(/* turbopackIgnore: true */ name).then((facts) => facts.size));
  };
  return {
    shared: false,
    size,
    keep: (sha256, desk) => keep(dataDir, sha256, desk),
    async read(sha256, file) {
      const name = pathOf(sha256, file);
      return name === null ? null : orAbsent(readFile(/* turbopackIgnore: true */ name));
    },
    async open(sha256, file, range) {
      const name = pathOf(sha256, file);
      const bytes = name === null ? null : await size(sha256, file);
      if (name === null || bytes === null) return null;
      const part = range ? { start: range.from, ...(range.to === null ? {} : { end: range.to }) } : {};
      return { size: bytes, body: createReadStream(/* turbopackIgnore: true */ name, part) };
    },
    async discard(sha256) {
      const original = pathOf(sha256, "original");
      if (original === null) return;
      await rm(viewFolder(dataDir, sha256), { recursive: true, force: true });
      await rm(original, { force: true });
    },
  };
}

async function orAbsent<T>(work: Promise<T>): Promise<T | null> {
  try {
    return await work;
  } catch (error) {
    if (errorCode(error) === "ENOENT") return null;
    throw error;
  }
}

/** Two renames: first the evidence, then what can be made anew from it. */
async function keep(dataDir: string, sha256: string, { original: file, views }: OnDesk): Promise<void> {
  const { originals, views: allViews } = photoFolders(dataDir);
  for (const folder of [originals, allViews]) await mkdir(folder, { recursive: true });
  const original = originalPath(dataDir, sha256);
  invariant(original !== null, "a computed hash is a hash");
  await chmod(file, 0o400);
  await rename(file, original);
  await placeViews(views, viewFolder(dataDir, sha256));
  // Before anybody writes a row that names it.
  await syncFolder(originals);
}

/** Puts a whole folder of derived pictures in its place, and waits until the disk has it. */
export async function placeViews(views: string, place: string): Promise<void> {
  try {
    await rename(views, place);
  } catch (error) {
    await replaceViews(error, views, place);
  }
  await syncFolder(place);
  await syncFolder(path.dirname(place));
}

/** A folder of that name is there: another process was faster, or an older one is broken. Ours is whole, so ours stays. */
async function replaceViews(error: unknown, views: string, place: string): Promise<void> {
  const code = errorCode(error);
  if (code !== "ENOTEMPTY" && code !== "EEXIST") throw error;
  // Into the desk, which is cleared afterwards.
  await rename(place, `${views}-old`);
  await rename(views, place);
}
