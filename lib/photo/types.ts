import type { PhotoIssue } from "./issue";

export const photoFormats = ["jpeg", "png", "webp", "heif", "tiff"] as const;
export type PhotoFormat = (typeof photoFormats)[number];

/** Longest side of each derived picture, px: for marking and print, for a page, for lists. */
export const photoSizes = { view: 4096, small: 1600, thumb: 480 } as const;
export type PhotoSize = keyof typeof photoSizes;

/** What is kept of a photo beside its bytes. */
export interface StoredPhoto {
  /** SHA-256 of the original bytes, 64 lower-case hex digits: the photo's name. */
  readonly sha256: string;
  readonly format: PhotoFormat;
  readonly bytes: number;
  /** The original, turned upright, px: the frame of the drawing. */
  readonly widthPx: number;
  readonly heightPx: number;
  /** The derived `view`, px; smaller than the original above 4096 px. */
  readonly viewWidthPx: number;
  readonly viewHeightPx: number;
  /** The time a camera wrote is personal metadata: it is not kept. */
  readonly captured: null;
  /** What the person should know although the photo was taken in. */
  readonly notices: readonly PhotoIssue[];
}

export interface ReceivedPhoto extends StoredPhoto {
  /** The same bytes were here before; nothing was written. */
  readonly alreadyStored: boolean;
}
