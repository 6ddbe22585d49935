import { randomUUID } from "node:crypto";
import { mkdir, rm } from "node:fs/promises";
import path from "node:path";
import { MAX_PHOTO_BYTES, type Result } from "@/lib/base";
import { storeRefusal, realDisk, type Disk } from "./disk";
import { inTurn, isFull } from "./in-turn";
import { oneByOne } from "./one-by-one";
import { refusal, type PhotoIssue } from "./issue";
import { incomingFolder } from "./paths";
import { saveStream, type ByteSource, type StreamLimits } from "./save-stream";
import { takeIn } from "./take-in";
import type { ReceivedPhoto } from "./types";

export interface ReceiveOptions {
  /** Length the sender announced (Content-Length), bytes; null when it announced none. */
  readonly declaredBytes: number | null;
  /** Who sends it: each sender has turns of their own at decoding; left out: this machine itself. */
  readonly sender?: string;
  readonly maxBytes?: number;
  /** For tests: another way to make files. */
  readonly disk?: Disk;
}

/**
 * Takes in one uploaded photo: receives, checks, decodes, stores, all or nothing. Whatever the answer, nothing is left
 * in `incoming`; a refused photo leaves no trace. The same bytes again are recognised and written nowhere. `place`: a data
 * folder, or a bucket (`photoStore`).
 *
 * Issues: every `photo-…` code but missing and altered; `notices` of the value carry what was accepted with a remark.
 * Throws only on faults of this program.
 */
export async function receivePhoto(
  place: string,
  source: ByteSource,
  { declaredBytes, sender = "here", maxBytes = MAX_PHOTO_BYTES, disk = realDisk }: ReceiveOptions,
): Promise<Result<ReceivedPhoto, PhotoIssue>> {
  if (declaredBytes !== null && declaredBytes > maxBytes) return refusal("photo-too-large", { maxBytes });
  // Before a byte is written: whoever has a heap waiting waits with the next one too.
  if (isFull(sender)) return refusal("photo-too-many-waiting");
  const desk = path.join(incomingFolder(place), randomUUID());
  try {
    return await receiveAt(desk, place, source, { declaredBytes, maxBytes, sender }, disk);
  } catch (error) {
    const refused = storeRefusal(error);
    if (refused === null) throw error;
    return refused;
  } finally {
    // A desk that cannot be cleared now is swept later; the answer matters more.
    await rm(desk, { recursive: true, force: true }).catch(() => undefined);
  }
}

async function receiveAt(
  desk: string,
  place: string,
  source: ByteSource,
  limits: StreamLimits & { readonly sender: string },
  disk: Disk,
): Promise<Result<ReceivedPhoto, PhotoIssue>> {
  await mkdir(desk, { recursive: true });
  const file = path.join(desk, "original");
  const saved = await saveStream(disk, file, source, limits);
  if (!saved.ok) return saved;
  const arrived = { place, desk, file, disk, ...saved.value };
  return inTurn(limits.sender, () => oneByOne(arrived.sha256, () => takeIn(arrived)));
}
