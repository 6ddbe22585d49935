import { open, type FileHandle } from "node:fs/promises";
import { refusal, StoreTrouble, type Refusal } from "./issue";

/** The one way this room makes files, so that a test can put a full disk in its place. */
export interface Disk {
  /** A new file, open for writing; fails when there is one already. */
  openNew(file: string): Promise<FileHandle>;
}

export const realDisk: Disk = { openNew: (file) => open(file, "wx") };

/** Writes a whole new file and waits until the disk has it. */
export async function writeNewFile(disk: Disk, file: string, bytes: Uint8Array | string): Promise<void> {
  const handle = await disk.openNew(file);
  try {
    await handle.writeFile(bytes);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** Waits until the disk has the names in a folder: a rename that only memory knows is gone with the power. */
export async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, "r");
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

const full = new Set(["ENOSPC", "EDQUOT", "EFBIG"]);
const unusable = new Set([
  "EACCES",
  "EEXIST",
  "EIO",
  "EMFILE",
  "ENFILE",
  "ENOENT",
  "ENOTDIR",
  "EPERM",
  "EROFS",
]);

export function errorCode(error: unknown): string | null {
  const code = error instanceof Error && "code" in error ? error.code : null;
  return typeof code === "string" ? code : null;
}

/** What a failed operation of disk or store means for the person; null when it is no such failure but a fault of ours. */
export function storeRefusal(error: unknown): Refusal | null {
  if (error instanceof StoreTrouble) {
    console.error(`photos: ${error.message}`);
    return refusal(error.full ? "photo-disk-full" : "photo-store-unusable");
  }
  const code = errorCode(error);
  if (code === null) return null;
  if (full.has(code)) return refusal("photo-disk-full");
  return unusable.has(code) ? refusal("photo-store-unusable") : null;
}
