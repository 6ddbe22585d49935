import { scaledTo } from "./scaled-to";

/** Longest side of what is shown of a photo that waits, px: as large as the server's own picture for marking. */
const VIEW_PX = 4096;

export interface LocalPicture {
  readonly widthPx: number;
  readonly heightPx: number;
  /** What is shown: the file itself, or a smaller picture of it where that would fill a phone's memory. */
  readonly view: Blob;
}

/** Reads a photo as this browser can, upright; null: it cannot (HEIC and TIFF in most). */
export async function readLocalPicture(file: Blob): Promise<LocalPicture | null> {
  const bitmap = await createImageBitmap(file).catch(() => null);
  if (!bitmap) return null;
  const { width: widthPx, height: heightPx } = bitmap;
  try {
    const small = scaledTo(widthPx, heightPx, VIEW_PX);
    const view = small.widthPx === widthPx ? file : await drawn(bitmap, small).catch(() => file);
    return { widthPx, heightPx, view };
  } finally {
    bitmap.close();
  }
}

async function drawn(bitmap: ImageBitmap, { widthPx, heightPx }: ReturnType<typeof scaledTo>): Promise<Blob> {
  const canvas = new OffscreenCanvas(widthPx, heightPx);
  canvas.getContext("2d")?.drawImage(bitmap, 0, 0, widthPx, heightPx);
  return canvas.convertToBlob({ type: "image/jpeg", quality: 0.9 });
}
