/** Brands of a file whose pictures are coded by HEVC or may be. ISO/IEC 23008-12, clause 10 and annex B, from memory. */
const BRANDS = /^(heic|heix|hevc|hevx|heim|heis|mif1|msf1)$/;

const text = (bytes: Uint8Array, at: number): string => String.fromCharCode(...bytes.subarray(at, at + 4));
const numberAt = (bytes: Uint8Array, at: number): number =>
  new DataView(bytes.buffer, bytes.byteOffset).getUint32(at);

/** By its first twelve bytes, whatever it is called. */
export const isHeic = (bytes: Uint8Array): boolean =>
  bytes.length >= 12 && text(bytes, 4) === "ftyp" && BRANDS.test(text(bytes, 8));

interface Box {
  readonly type: string;
  /** Of its contents. */
  readonly from: number;
  readonly to: number;
}

/** Boxes that lie one after the other (ISO/IEC 14496-12). One that claims more than there is, or nothing, ends the list. */
function boxesIn(bytes: Uint8Array, from: number, to: number): readonly Box[] {
  const boxes: Box[] = [];
  for (let at = from; at + 8 <= to;) {
    const size = numberAt(bytes, at);
    const end = size === 0 ? to : at + size; // 0: up to the end of the file
    if (size === 1 || end > to || end < at + 8) break; // 1: larger than 4 GB, which no photo is
    boxes.push({ type: text(bytes, at + 4), from: at + 8, to: end });
    at = end;
  }
  return boxes;
}

/**
 * The file with its thumbnails as pictures of their own: a decoder that gives out whole pictures alone then gives them
 * out as well. What makes a thumbnail one is four letters, the reference "thmb" to the picture it is one of; they are
 * written over. Null where the file has no thumbnail.
 */
export function thumbnailsFreed(bytes: Uint8Array): Uint8Array<ArrayBuffer> | null {
  const meta = boxesIn(bytes, 0, bytes.length).find(({ type }) => type === "meta");
  // Four bytes of version and flags come first, in both.
  const iref = meta && boxesIn(bytes, meta.from + 4, meta.to).find(({ type }) => type === "iref");
  const found = iref ? boxesIn(bytes, iref.from + 4, iref.to).filter(({ type }) => type === "thmb") : [];
  if (found.length === 0) return null;
  const freed = new Uint8Array(bytes);
  for (const { from } of found) freed.set(new TextEncoder().encode("free"), from - 4);
  return freed;
}
