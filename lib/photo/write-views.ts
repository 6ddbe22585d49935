import { mkdir } from "node:fs/promises";
import path from "node:path";
import sharp, { type Sharp } from "sharp";
import type { Pixels } from "./pixels";
import { writeNewFile, type Disk } from "./disk";
import { META_FILE, viewFile } from "./paths";
import { metaText } from "./stored-photo";
import { photoSizes, type PhotoSize, type StoredPhoto } from "./types";

/** 4:4:4 keeps the colour edges of heat tint and slag where they are; a marking tool is read at the pixel. */
const jpeg = (image: Sharp): Sharp => image.jpeg({ quality: 88, chromaSubsampling: "4:4:4" });
const encoders: Readonly<Record<PhotoSize, (image: Sharp) => Sharp>> = {
  view: jpeg,
  small: jpeg,
  thumb: (image) => image.webp({ quality: 80 }),
};

/**
 * Removal of Exif, XMP, IPTC and GPS: this is where it happens. Writes the derived pictures and meta.json into a new
 * folder. They are made from bare pixels, so no metadata of the original (place, time, camera, owner) can come along.
 * Throws what the disk throws.
 */
export async function writeViews(
  disk: Disk,
  folder: string,
  pixels: Pixels,
  photo: StoredPhoto,
): Promise<void> {
  await mkdir(folder);
  for (const size of Object.keys(encoders) as PhotoSize[]) {
    const bytes = await encoders[size](scaled(pixels, photoSizes[size])).toBuffer();
    await writeNewFile(disk, path.join(folder, viewFile(size)), bytes);
  }
  await writeNewFile(disk, path.join(folder, META_FILE), metaText(photo));
}

function scaled({ data, widthPx, heightPx }: Pixels, longest: number): Sharp {
  return sharp(data, { raw: { width: widthPx, height: heightPx, channels: 3 } }).resize({
    width: longest,
    height: longest,
    fit: "inside",
    withoutEnlargement: true,
  });
}
