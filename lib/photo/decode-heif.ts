import path from "node:path";
import { Worker } from "node:worker_threads";
import { MAX_PIXELS } from "./inspect";

export interface HeifPixels {
  readonly width: number;
  readonly height: number;
  /** RGBA, 8 bit, turned by the file's own transforms. */
  readonly data: Uint8ClampedArray;
}

/** 48 megapixels take some 5 s on a slow machine; a file that takes a minute is not a photo. */
const DEADLINE_MS = 60_000;

/** The one picture of a HEIF file; null when it cannot be read, is larger than allowed or does not come to an end. */
export async function decodeHeif(bytes: Uint8Array, deadlineMs = DEADLINE_MS): Promise<HeifPixels | null> {
  const file = path.join(/* turbopackIgnore: true */ process.cwd(), "lib", "photo", "heif-worker.mjs");
  const worker = new Worker(/* turbopackIgnore: true */ file, {
    workerData: { bytes, maxPixels: MAX_PIXELS },
    // The decoder prints what it dislikes; the answer says it to the person instead.
    stdout: true,
    stderr: true,
    execArgv: [],
  });
  let deadline: NodeJS.Timeout | undefined;
  try {
    return await new Promise<HeifPixels | null>((resolve) => {
      deadline = setTimeout(() => resolve(null), deadlineMs);
      worker.once("message", resolve);
      worker.once("error", () => resolve(null));
      worker.once("exit", () => resolve(null));
    });
  } finally {
    clearTimeout(deadline);
    await worker.terminate();
  }
}
