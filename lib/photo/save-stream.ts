import { createHash } from "node:crypto";
import { ok, type Result } from "@/lib/base";
import type { Disk } from "./disk";
import { refusal, type PhotoIssue } from "./issue";

export type ByteSource = ReadableStream<Uint8Array> | AsyncIterable<Uint8Array>;

export interface StreamLimits {
  /** Length the sender announced, bytes; null when it announced none. */
  readonly declaredBytes: number | null;
  readonly maxBytes: number;
}

export interface SavedStream {
  readonly bytes: number;
  readonly sha256: string;
}

/** The sender's failure, told apart from the disk's. */
class StreamBroke extends Error {}

async function* fromSender(source: ByteSource): AsyncGenerator<Uint8Array> {
  try {
    // Node's ReadableStream is iterable; the browser's type does not say so.
    yield* source as AsyncIterable<Uint8Array>;
  } catch (cause) {
    throw new StreamBroke("the sender's stream broke off", { cause });
  }
}

/**
 * Writes a stream to a new file while hashing it, and stops at the first byte too many. The file stays behind whatever
 * the answer: removing it is the caller's, once. Throws what the disk throws.
 */
export async function saveStream(
  disk: Disk,
  file: string,
  source: ByteSource,
  { declaredBytes, maxBytes }: StreamLimits,
): Promise<Result<SavedStream, PhotoIssue>> {
  const hash = createHash("sha256");
  let bytes = 0;
  const handle = await disk.openNew(file);
  try {
    for await (const chunk of fromSender(source)) {
      bytes += chunk.byteLength;
      if (bytes > maxBytes) return refusal("photo-too-large", { maxBytes });
      hash.update(chunk);
      await handle.writeFile(chunk);
    }
    if (declaredBytes !== null && bytes !== declaredBytes) {
      return refusal("photo-cut-off", { bytes, declaredBytes });
    }
    if (bytes === 0) return refusal("photo-empty");
    await handle.sync();
    return ok({ bytes, sha256: hash.digest("hex") });
  } catch (error) {
    if (error instanceof StreamBroke) return refusal("photo-cut-off", { bytes });
    throw error;
  } finally {
    await handle.close();
  }
}
