import { isHeic } from "./heic-boxes";
import type { Preview } from "./heic-preview";

/** A small picture of a file that this browser cannot show; null where it carries none, or is no HEIC. */
export async function lookIntoHeic(file: Blob): Promise<Blob | null> {
  if (!isHeic(new Uint8Array(await file.slice(0, 12).arrayBuffer()))) return null;
  const preview = await askWorker(new Uint8Array(await file.arrayBuffer()));
  if (preview === null) return null;
  const { width, height, data } = preview;
  const canvas = new OffscreenCanvas(width, height);
  canvas.getContext("2d")?.putImageData(new ImageData(data, width, height), 0, 0);
  return canvas.convertToBlob({ type: "image/jpeg", quality: 0.9 });
}

function askWorker(bytes: Uint8Array<ArrayBuffer>): Promise<Preview | null> {
  const worker = new Worker(new URL("./heic-worker.ts", import.meta.url), { type: "module" });
  return new Promise<Preview | null>((resolve) => {
    worker.onmessage = ({ data }: MessageEvent<Preview | null>) => resolve(data);
    worker.onerror = () => resolve(null);
    worker.postMessage(bytes, [bytes.buffer]);
  }).finally(() => worker.terminate());
}
