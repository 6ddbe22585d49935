import sharp, { type Metadata } from "sharp";
import { issue, ok, type Result } from "@/lib/base";
import { exifOrientation } from "./exif-orientation";
import { isAnimatedPng } from "./is-animated-png";
import { refusal, type PhotoIssue } from "./issue";
import { sniff } from "./sniff";
import { readFirstDirectory, tiffTag } from "./tiff-tags";
import type { PhotoFormat } from "./types";

export const MAX_PIXELS = 64_000_000;
export const MIN_SIDE_PX = 64;

/** What decoding costs goes with the bytes of the bare picture: the most pixels there may be, in three colours of 16 bits. */
const MAX_DECODED_BYTES = MAX_PIXELS * 3 * 2;
/** An interlaced PNG is read seven times over and whole at once. No camera writes one; a small one does no harm. */
const MAX_INTERLACED_BYTES = 16_000_000;

/** What the headers say, all of it checked before a pixel is decoded. */
export interface Inspected {
  readonly format: PhotoFormat;
  /** Upright, px. */
  readonly widthPx: number;
  readonly heightPx: number;
  /** Whether the decoder shall turn the picture by its orientation note. */
  readonly turn: boolean;
  /** Colour profile, where the decoder does not apply it itself (HEIF). */
  readonly profile: Buffer | null;
  readonly notices: readonly PhotoIssue[];
}

/** Reads headers only: kind, count of pictures, size, orientation. Nothing is allocated by a size a file claims. */
export async function inspect(bytes: Buffer): Promise<Result<Inspected, PhotoIssue>> {
  const sniffed = sniff(bytes);
  if ("refuse" in sniffed) return refusal(sniffed.refuse, { looksLike: sniffed.looksLike });
  const { format } = sniffed;
  if (format === "tiff" && isRaw(bytes)) return refusal("photo-camera-raw");
  if (format === "png" && isAnimatedPng(bytes)) {
    return refusal("photo-many-pictures", { looksLike: "an animated PNG" });
  }
  const header = await readHeader(bytes);
  if (header === null || header.format !== format) return refusal("photo-damaged");
  if ((header.pages ?? 1) > 1) return refusal("photo-many-pictures", { looksLike: several[format] });
  return checkSize(header, format);
}

const several: Readonly<Record<PhotoFormat, string>> = {
  jpeg: "a JPEG of several pictures",
  png: "an animated PNG",
  webp: "an animated WebP",
  heif: "a HEIC collection",
  tiff: "a TIFF of several pages",
};

async function readHeader(bytes: Buffer): Promise<Metadata | null> {
  try {
    // No limit here: the header is read so that the refusal can name the size; nothing is decoded by it.
    return await sharp(bytes, { limitInputPixels: false }).metadata();
  } catch {
    return null;
  }
}

function decodedBytes({ width, height, channels = 3, depth }: Metadata): number {
  const bytes = depth === "uchar" || depth === "char" ? 1 : depth === "ushort" || depth === "short" ? 2 : 4;
  return width * height * channels * bytes;
}

/** A raw file is a TIFF whose first directory is a preview, or that says it is a digital negative. */
function isRaw(bytes: Buffer): boolean {
  const first = readFirstDirectory(bytes);
  if (first === null) return false;
  const isPreview = ((first.values.get(tiffTag.newSubfileType) ?? 0) & 1) === 1;
  return isPreview || first.values.has(tiffTag.dngVersion);
}

function checkSize(header: Metadata, format: PhotoFormat): Result<Inspected, PhotoIssue> {
  const { width, height } = header;
  if (width * height > MAX_PIXELS) {
    return refusal("photo-too-many-pixels", { widthPx: width, heightPx: height, maxPixels: MAX_PIXELS });
  }
  if (
    decodedBytes(header) >
    (header.isProgressive && format === "png" ? MAX_INTERLACED_BYTES : MAX_DECODED_BYTES)
  )
    return refusal("photo-too-costly");
  if (Math.min(width, height) < MIN_SIDE_PX) {
    return refusal("photo-too-small", { widthPx: width, heightPx: height, minSidePx: MIN_SIDE_PX });
  }
  const readable = format === "heif" || orientationIsReadable(header);
  // HEIF: the decoder applies the file's own `irot`/`imir`; its Exif orientation is for information only
  // (ISO/IEC 23008-12, from memory) and applying it too would turn the picture twice.
  const turn = format !== "heif" && readable;
  const lies = turn && (header.orientation ?? 1) >= 5;
  return ok({
    format,
    widthPx: lies ? height : width,
    heightPx: lies ? width : height,
    turn,
    profile: format === "heif" ? (header.icc ?? null) : null,
    notices: readable ? [] : [issue("photo-orientation-unreadable")],
  });
}

/** The decoder takes a broken note for "upright" without a word; reading it ourselves tells the two apart. */
function orientationIsReadable({ exif, orientation }: Metadata): boolean {
  return exif === undefined || exifOrientation(exif) === (orientation ?? 1);
}
