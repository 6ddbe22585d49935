import sharp, { type FailOnOptions, type Sharp } from "sharp";
import { issue, ok, type Result } from "@/lib/base";
import { decodeHeif } from "./decode-heif";
import { MAX_PIXELS, type Inspected } from "./inspect";
import { refusal, type PhotoIssue } from "./issue";
import type { Pixels } from "./pixels";
import { withProfile } from "./with-profile";
import { photoSizes } from "./types";

export interface Decoded {
  readonly pixels: Pixels;
  readonly notices: readonly PhotoIssue[];
}

/** Decodes an inspected photo to the pixels of its largest view. Whatever cannot be read to its end is refused. */
export async function decode(bytes: Buffer, inspected: Inspected): Promise<Result<Decoded, PhotoIssue>> {
  const read = inspected.format === "heif" ? readHeif : readBySharp;
  const clean = await attempt(() => read(bytes, inspected, "warning"));
  if (clean !== null) return ok({ pixels: clean, notices: [] });
  if (inspected.format === "heif") return refusal("photo-damaged");
  // A scratch inside a picture that is otherwise whole is the person's to judge: it is kept, and said.
  const scratched = await attempt(() => read(bytes, inspected, "error"));
  if (scratched === null) return refusal("photo-damaged");
  return ok({ pixels: scratched, notices: [issue("photo-damaged-in-places")] });
}

/** Decoders throw on bad pictures; that is the picture's fault and an ordinary answer. */
async function attempt(work: () => Promise<Pixels | null>): Promise<Pixels | null> {
  try {
    return await work();
  } catch {
    return null;
  }
}

async function readBySharp(bytes: Buffer, { turn }: Inspected, failOn: FailOnOptions): Promise<Pixels> {
  const image = sharp(bytes, { failOn, limitInputPixels: MAX_PIXELS, sequentialRead: true, pages: 1 });
  return toPixels(turn ? image.autoOrient() : image);
}

async function readHeif(bytes: Buffer, { profile }: Inspected): Promise<Pixels | null> {
  const picture = await decodeHeif(bytes);
  if (picture === null) return null;
  const { data, width, height } = picture;
  const pixels = await toPixels(sharp(data, { raw: { width, height, channels: 4 } }));
  return profile === null ? pixels : toPixels(sharp(await withProfile(pixels, profile)));
}

/** A photo of the largest size takes some 3 s; one that takes a minute was made to. */
const DEADLINE_S = 60;

async function toPixels(image: Sharp): Promise<Pixels> {
  const { view } = photoSizes;
  const { data, info } = await image
    .resize({ width: view, height: view, fit: "inside", withoutEnlargement: true })
    .flatten({ background: "#ffffff" })
    .toColourspace("srgb")
    .raw({ depth: "uchar" })
    .timeout({ seconds: DEADLINE_S })
    .toBuffer({ resolveWithObject: true });
  return { data, widthPx: info.width, heightPx: info.height };
}
