import type { Result } from "@/lib/base";
import type { Scale } from "@/lib/marks";
import { stripScale } from "@/lib/sight";
import type { FoundStrip, StripIssue } from "@/lib/strip";
import { photoPixels } from "./photo-pixels";

export interface StripPhoto {
  /** Of the largest picture there is. */
  readonly url: string;
  /** The upright original, in pixels: what the drawing counts in. */
  readonly widthPx: number;
}

function askWorker(image: ImageData): Promise<Result<FoundStrip, StripIssue>> {
  const worker = new Worker(new URL("./strip-worker.ts", import.meta.url), { type: "module" });
  return new Promise<Result<FoundStrip, StripIssue>>((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<Result<FoundStrip, StripIssue>>) => resolve(data);
    worker.onerror = () => reject(new Error("the search ended early"));
    worker.postMessage({ width: image.width, height: image.height, data: image.data }, [image.data.buffer]);
  }).finally(() => worker.terminate());
}

/** Finds the strip in a photo and gives the scale in the drawing's pixels, or why there is none. */
export async function lookForStrip(photo: StripPhoto): Promise<Result<Scale, StripIssue>> {
  const image = await photoPixels(photo.url);
  const found = await askWorker(image);
  if (!found.ok) return found;
  return { ok: true, value: stripScale(found.value, photo.widthPx / image.width) };
}
