import { scaleOfSeen, seenSentence, type ScaleOfSeen, type SeenScale } from "@/lib/sight";
import type { StripPhoto } from "./look-for-strip";
import { photoPixels } from "./photo-pixels";

/** What a photo shows of known size, in the drawing's pixels, and in words. */
type SeenOnPhoto = ScaleOfSeen & { readonly words: string };

function askWorker(image: ImageData): Promise<SeenScale | null> {
  const worker = new Worker(new URL("./scale-worker.ts", import.meta.url), { type: "module" });
  return new Promise<SeenScale | null>((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<{ seen: SeenScale | null }>) => resolve(data.seen);
    worker.onerror = () => reject(new Error("the search ended early"));
    worker.postMessage({ width: image.width, height: image.height, data: image.data }, [image.data.buffer]);
  }).finally(() => worker.terminate());
}

/** Looks for the printed strip, a card, a rule or a disc; null where none is plain. Throws when nothing answers. */
export async function lookForScale(photo: StripPhoto): Promise<SeenOnPhoto | null> {
  const image = await photoPixels(photo.url);
  const factor = photo.widthPx / image.width;
  const seen = await askWorker(image);
  return seen && { ...scaleOfSeen(seen, factor), words: seenSentence(seen) };
}
