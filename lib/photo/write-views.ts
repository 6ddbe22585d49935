import { mkdir } from "node:fs/promises";
import path from "node:path";
import sharp, { type Sharp } from "sharp";
import type { Pixels } from "./pixels";
import { writeNewFile, type Disk } from "./disk";
import { META_FILE, viewFile } from "./paths";
import { metaText } from "./stored-photo";
import { photoSizes, type PhotoSize, type StoredPhoto } from "./types";

/**
 * How the same pixels become bytes: as it is done now, then as it was done before. What was sealed then can be made anew only
 * the way it was made. Huffman tables fitted to each picture make its view 8 % smaller and take half of the time of an upload.
 */
export const codings = ["quick", "fitted"] as const;
export type Coding = (typeof codings)[number];

/** 4:4:4 keeps the colour edges of heat tint and slag where they are; a marking tool is read at the pixel. */
const jpeg = (image: Sharp, coding: Coding): Sharp =>
  image.jpeg({ quality: 88, chromaSubsampling: "4:4:4", optimiseCoding: coding === "fitted" });
const encoders: Readonly<Record<PhotoSize, (image: Sharp, coding: Coding) => Sharp>> = {
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
  coding: Coding = "quick",
): Promise<void> {
  await mkdir(folder);
  const writing = (Object.keys(encoders) as PhotoSize[]).map(async (size) => {
    const bytes = await encoders[size](scaled(pixels, photoSizes[size]), coding).toBuffer();
    await writeNewFile(disk, path.join(folder, viewFile(size)), bytes);
  });
  const meta = writeNewFile(disk, path.join(folder, META_FILE), metaText(photo));
  // Side by side; none of them may still write when the desk is cleared after one has failed.
  const done = await Promise.allSettled([...writing, meta]);
  for (const one of done) if (one.status === "rejected") throw one.reason;
}

function scaled({ data, widthPx, heightPx }: Pixels, longest: number): Sharp {
  return sharp(data, { raw: { width: widthPx, height: heightPx, channels: 3 } }).resize({
    width: longest,
    height: longest,
    fit: "inside",
    withoutEnlargement: true,
  });
}
