import { chmod, readFile, rename } from "node:fs/promises";
import path from "node:path";
import { invariant, ok, type Result } from "@/lib/base";
import { decode, type Decoded } from "./decode";
import { errorCode, syncFolder, type Disk } from "./disk";
import { inspect, type Inspected } from "./inspect";
import type { PhotoIssue } from "./issue";
import { originalPath, viewFolder } from "./paths";
import { readStoredPhoto } from "./stored-photo";
import type { ReceivedPhoto, StoredPhoto } from "./types";
import { writeViews } from "./write-views";

export interface Arrived {
  readonly dataDir: string;
  /** Folder of this upload alone, on the file system of the store. */
  readonly desk: string;
  /** The received bytes, inside the desk. */
  readonly file: string;
  readonly disk: Disk;
  readonly bytes: number;
  readonly sha256: string;
}

/** Checks, decodes and keeps a photo whose bytes have arrived. Throws what the disk throws. */
export async function takeIn(arrived: Arrived): Promise<Result<ReceivedPhoto, PhotoIssue>> {
  const known = await readStoredPhoto(arrived.dataDir, arrived.sha256);
  if (known !== null) return ok({ ...known, alreadyStored: true });
  const bytes = await readFile(arrived.file);
  const inspected = await inspect(bytes);
  if (!inspected.ok) return inspected;
  const decoded = await decode(bytes, inspected.value);
  if (!decoded.ok) return decoded;
  const photo = describe(arrived, inspected.value, decoded.value);
  const views = path.join(arrived.desk, "views");
  await writeViews(arrived.disk, views, decoded.value.pixels, photo);
  await keep(arrived, views);
  return ok({ ...photo, alreadyStored: false });
}

function describe(arrived: Arrived, inspected: Inspected, { pixels, notices }: Decoded): StoredPhoto {
  return {
    sha256: arrived.sha256,
    format: inspected.format,
    bytes: arrived.bytes,
    widthPx: inspected.widthPx,
    heightPx: inspected.heightPx,
    viewWidthPx: pixels.widthPx,
    viewHeightPx: pixels.heightPx,
    captured: null,
    notices: [...inspected.notices, ...notices],
  };
}

/** Two renames: first the evidence, then what can be made anew from it. A photo counts as stored when both are there. */
async function keep({ dataDir, file, sha256 }: Arrived, views: string): Promise<void> {
  const original = originalPath(dataDir, sha256);
  invariant(original !== null, "a computed hash is a hash");
  await chmod(file, 0o400);
  await rename(file, original);
  await placeViews(views, viewFolder(dataDir, sha256));
  // Before anybody writes a row that names it.
  await syncFolder(path.dirname(original));
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
