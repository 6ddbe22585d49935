import { randomUUID } from "node:crypto";
import { mkdir, readFile, rm } from "node:fs/promises";
import path from "node:path";
import { createHash } from "node:crypto";
import { decode } from "./decode";
import { realDisk } from "./disk";
import { inspect } from "./inspect";
import { originalPath, photoFolders, viewFile, viewFolder } from "./paths";
import { placeViews } from "./folder-store";
import { photoSizes, type PhotoSize, type StoredPhoto } from "./types";
import { codings, writeViews } from "./write-views";

/** "made": they are there again, byte for byte. "other": they come out otherwise now. "unreadable": the original is not what it was. */
export type Remade = "made" | "other" | "unreadable";

/**
 * Makes the derived pictures and meta.json of an original anew, and puts them in place only where each is the very picture
 * that was sealed. `sealed`: SHA-256 by size, as the log says; a size without a seal is taken as it comes.
 */
export async function remakeViews(
  dataDir: string,
  sha256: string,
  sealed: Readonly<Partial<Record<PhotoSize, string>>>,
): Promise<Remade> {
  const original = originalPath(dataDir, sha256);
  const bytes = original && (await readFile(original).catch(() => null));
  if (!bytes || digest(bytes) !== sha256) return "unreadable";
  const desk = path.join(photoFolders(dataDir).incoming, randomUUID());
  await mkdir(desk, { recursive: true, mode: 0o700 });
  try {
    return await remakeAt(desk, { dataDir, sha256, bytes, sealed });
  } finally {
    await rm(desk, { recursive: true, force: true });
  }
}

const digest = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

interface Remaking {
  readonly dataDir: string;
  readonly sha256: string;
  readonly bytes: Buffer;
  readonly sealed: Readonly<Partial<Record<PhotoSize, string>>>;
}

async function remakeAt(desk: string, { dataDir, sha256, bytes, sealed }: Remaking): Promise<Remade> {
  const inspected = await inspect(bytes);
  const decoded = inspected.ok ? await decode(bytes, inspected.value) : inspected;
  if (!inspected.ok || !decoded.ok) return "unreadable";
  const { format, widthPx, heightPx, notices } = inspected.value;
  const { pixels } = decoded.value;
  const photo: StoredPhoto = {
    ...{ sha256, format, bytes: bytes.length, widthPx, heightPx },
    viewWidthPx: pixels.widthPx,
    viewHeightPx: pixels.heightPx,
    captured: null,
    notices: [...notices, ...decoded.value.notices],
  };
  for (const coding of codings) {
    const made = path.join(desk, coding);
    await writeViews(realDisk, made, pixels, photo, coding);
    if (!(await isAsSealed(made, sealed))) continue;
    await placeViews(made, viewFolder(dataDir, sha256));
    return "made";
  }
  return "other";
}

async function isAsSealed(made: string, sealed: Remaking["sealed"]): Promise<boolean> {
  for (const size of Object.keys(photoSizes) as PhotoSize[]) {
    const is = digest(await readFile(path.join(made, viewFile(size))));
    if (sealed[size] !== undefined && sealed[size] !== is) return false;
  }
  return true;
}
