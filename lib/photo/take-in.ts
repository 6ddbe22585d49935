import { readFile } from "node:fs/promises";
import path from "node:path";
import { ok, type Result } from "@/lib/base";
import { decode, type Decoded } from "./decode";
import type { Disk } from "./disk";
import { inspect, type Inspected } from "./inspect";
import type { PhotoIssue } from "./issue";
import { photoStore } from "./store";
import { readStoredPhoto } from "./stored-photo";
import type { ReceivedPhoto, StoredPhoto } from "./types";
import { writeViews } from "./write-views";

export interface Arrived {
  /** Where it is to be kept (`photoStore`). */
  readonly place: string;
  /** Folder of this upload alone; of a store that is a folder, on its file system. */
  readonly desk: string;
  /** The received bytes, inside the desk. */
  readonly file: string;
  readonly disk: Disk;
  readonly bytes: number;
  readonly sha256: string;
}

/** Checks, decodes and keeps a photo whose bytes have arrived. Throws what disk and store throw. */
export async function takeIn(arrived: Arrived): Promise<Result<ReceivedPhoto, PhotoIssue>> {
  const known = await readStoredPhoto(arrived.place, arrived.sha256);
  if (known !== null) return ok({ ...known, alreadyStored: true });
  const bytes = await readFile(arrived.file);
  const inspected = await inspect(bytes);
  if (!inspected.ok) return inspected;
  const decoded = await decode(bytes, inspected.value);
  if (!decoded.ok) return decoded;
  const photo = describe(arrived, inspected.value, decoded.value);
  const views = path.join(arrived.desk, "views");
  await writeViews(arrived.disk, views, decoded.value.pixels, photo);
  await photoStore(arrived.place).keep(arrived.sha256, { original: arrived.file, views });
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
