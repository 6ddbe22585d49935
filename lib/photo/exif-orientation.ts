import { readFirstDirectory, tiffTag } from "./tiff-tags";

/**
 * The orientation an Exif block gives (Exif 2.3, tag 274: 1 to 8), 1 when it gives none, null when the block cannot
 * be read or the value is not one of the eight. The block may begin with the "Exif" mark of a JPEG segment.
 */
export function exifOrientation(block: Uint8Array): number | null {
  const marked = Buffer.from(block.subarray(0, 6)).toString("latin1") === "Exif\0\0";
  const directory = readFirstDirectory(marked ? block.subarray(6) : block);
  if (directory === null) return null;
  const value = directory.values.get(tiffTag.orientation);
  if (value === undefined) return directory.complete ? 1 : null;
  return value >= 1 && value <= 8 ? value : null;
}
