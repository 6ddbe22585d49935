import { constants } from "node:fs";
import { copyFile, link, mkdir, open, readdir, stat } from "node:fs/promises";
import path from "node:path";

/** Beside the database and the photos: what signs cookies, and what signs for this installation. */
export const KEY_FILES = ["session-key", "installation-key"] as const;

interface Copying {
  readonly from: string;
  readonly to: string;
  /** An earlier copy: a photo that lies there already is shared with it instead of written again. */
  readonly sharing: string | null;
}

async function sync(file: string): Promise<void> {
  const handle = await open(file, "r");
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** Copies one file and waits until the disk has it. Photos never change, so an equal one of an earlier copy is shared. */
async function copyOne({ from, to, sharing }: Copying): Promise<void> {
  if (sharing !== null && (await share(from, to, sharing))) return;
  await copyFile(from, to, constants.COPYFILE_EXCL | constants.COPYFILE_FICLONE);
  await sync(to);
}

async function share(from: string, to: string, sharing: string): Promise<boolean> {
  try {
    const [one, other] = [await stat(from), await stat(sharing)];
    if (one.size !== other.size || one.mtimeMs > other.mtimeMs) return false;
    await link(sharing, to);
    return true;
  } catch {
    // Not there, or a disk that cannot share: then it is copied.
    return false;
  }
}

/** Copies a folder with all that is in it; how many files. A file that went away meanwhile was nobody's any more. */
async function copyFolder({ from, to, sharing }: Copying): Promise<number> {
  let count = 0;
  await mkdir(to, { recursive: true, mode: 0o700 });
  for (const entry of await namesIn(from)) {
    const one = {
      from: path.join(from, entry.name),
      to: path.join(to, entry.name),
      sharing: sharing && path.join(sharing, entry.name),
    };
    count += entry.isDirectory() ? await copyFolder(one) : await copyOne(one).then(() => 1, goneMeanwhile);
  }
  await sync(to);
  return count;
}

const isMissing = (error: unknown): boolean => (error as NodeJS.ErrnoException).code === "ENOENT";

async function namesIn(folder: string) {
  return readdir(folder, { withFileTypes: true }).catch((error: unknown) => {
    if (isMissing(error)) return [];
    throw error;
  });
}

function goneMeanwhile(error: unknown): number {
  if (isMissing(error)) return 0;
  throw error;
}

/** Copies photos and keys of a data folder; how many files. Uploads on their way stay behind. */
export async function copyFiles({ from, to, sharing }: Copying): Promise<number> {
  let count = 0;
  for (const name of ["originals", "views"]) {
    const part = path.join("photos", name);
    count += await copyFolder({
      from: path.join(from, part),
      to: path.join(to, part),
      sharing: sharing && path.join(sharing, part),
    });
  }
  for (const name of KEY_FILES)
    count += await copyOne({
      from: path.join(/* turbopackIgnore: true */ from, name),
      to: path.join(/* turbopackIgnore: true */ to, name),
      sharing: null,
    }).then(() => 1, goneMeanwhile);
  await sync(to);
  return count;
}
