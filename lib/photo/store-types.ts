import type { PhotoSize } from "./types";

/** What is kept of one photo: the evidence, what is shown of it, and what was found out about it. */
export type PhotoFile = "original" | PhotoSize | "meta";

/** The part of a file that is wanted, both ends in it; `to` null: to its end. */
export interface ByteRange {
  readonly from: number;
  readonly to: number | null;
}

export interface OpenFile {
  /** Of the whole file. */
  readonly size: number;
  readonly body: AsyncIterable<Uint8Array>;
}

/** A photo that has been taken in and lies on this machine: its original, and the folder with its views and meta.json. */
export interface OnDesk {
  readonly original: string;
  readonly views: string;
}

/**
 * Where photos are kept, by the SHA-256 of their originals; a name that is none has no files. A photo is there when its
 * original and its meta are: whatever keeps it writes the original first and meta last. Nothing here ever lists.
 * A store that does not answer throws what `storeRefusal` has words for.
 */
export interface PhotoStore {
  /** Keeps a photo whole; the same one again changes nothing of its original. What lay on the desk may be gone afterwards. */
  keep(sha256: string, desk: OnDesk): Promise<void>;
  /** null: there is no such file. */
  read(sha256: string, file: PhotoFile): Promise<Buffer | null>;
  open(sha256: string, file: PhotoFile, range?: ByteRange): Promise<OpenFile | null>;
  /** Bytes; null: there is no such file. */
  size(sha256: string, file: PhotoFile): Promise<number | null>;
  /** Takes a photo out: what can be made anew first, so that what is left counts as not stored. */
  discard(sha256: string): Promise<void>;
  /** Other servers keep and discard here too. */
  readonly shared: boolean;
}
