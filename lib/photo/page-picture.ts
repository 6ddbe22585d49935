import sharp from "sharp";
import { photoStore } from "./store";

/** Longest side, px: twice and a half the width of a phone's page. */
export const PAGE_PX = 900;

/**
 * The picture for a page read on a phone, WebP: a quarter of the bytes of `small`. It is worked out of `small` whenever it is
 * asked for and kept nowhere, so it needs no seal and older photos have it too. null: there is no such photo, or its `small`
 * cannot be read.
 */
export async function pagePicture(place: string, sha256: string): Promise<Buffer | null> {
  const small = await photoStore(place).read(sha256, "small");
  if (small === null) return null;
  return sharp(small)
    .resize({ width: PAGE_PX, height: PAGE_PX, fit: "inside", withoutEnlargement: true })
    .webp({ quality: 80 })
    .toBuffer()
    .catch(() => null);
}
