import heic from "heic-decode";
import { thumbnailsFreed } from "./heic-boxes";

export interface Preview {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8ClampedArray<ArrayBuffer>;
}

/** Decoding more than this takes a phone longer than a preview is worth: the server is at it already. */
const MOST_PIXELS = 2_000_000;

/** The smallest picture of a HEIC file, which is its thumbnail where it carries one; null where even that is large. */
export async function heicPreview(file: Uint8Array): Promise<Preview | null> {
  const pictures = await heic.all({ buffer: thumbnailsFreed(file) ?? file });
  const [smallest] = pictures.toSorted((a, b) => a.width * a.height - b.width * b.height);
  if (!smallest || smallest.width * smallest.height > MOST_PIXELS) return null;
  const { width, height } = smallest;
  return { width, height, data: (await smallest.decode()).data };
}
