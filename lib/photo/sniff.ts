import type { PhotoIssueCode } from "./issue";
import { boxBrands } from "./heif-brands";
import { looksLikeText } from "./sniff-text";
import type { PhotoFormat } from "./types";

export type Sniffed =
  | { readonly format: PhotoFormat }
  | { readonly refuse: PhotoIssueCode; readonly looksLike: string };

const not = (looksLike: string): Sniffed => ({ refuse: "photo-not-a-picture", looksLike });
const unread = (looksLike: string): Sniffed => ({ refuse: "photo-unsupported-picture", looksLike });

/** First bytes (as Latin-1 text), where they start, and what they say. The first match holds. */
const signatures: readonly (readonly [magic: string, at: number, Sniffed])[] = [
  ["\xff\xd8\xff", 0, { format: "jpeg" }],
  ["\x89PNG\r\n\x1a\n", 0, { format: "png" }],
  ["WEBP", 8, { format: "webp" }],
  ["CR\x02", 8, { refuse: "photo-camera-raw", looksLike: "a camera's raw file" }],
  ["II*\0", 0, { format: "tiff" }],
  ["MM\0*", 0, { format: "tiff" }],
  ["GIF8", 0, unread("a GIF")],
  ["BM", 0, unread("a BMP bitmap")],
  ["8BPS", 0, unread("a layered image file")],
  ["\xff\x0a", 0, unread("a JPEG XL picture")],
  ["\0\0\0\x0cJXL ", 0, unread("a JPEG XL picture")],
  ["\0\0\0\x0cjP  ", 0, unread("a JPEG 2000 picture")],
  ["\0\0\x01\0", 0, unread("an icon")],
  ["FUJIFILM", 0, { refuse: "photo-camera-raw", looksLike: "a camera's raw file" }],
  ["%PDF", 0, not("a PDF document")],
  ["PK\x03\x04", 0, not("a zip archive or office document")],
  ["PK\x05\x06", 0, not("a zip archive")],
  ["\x1f\x8b", 0, not("a gzip archive")],
  ["7z\xbc\xaf\x27\x1c", 0, not("a 7z archive")],
  ["Rar!", 0, not("a RAR archive")],
  ["MZ", 0, not("a program")],
  ["\x7fELF", 0, not("a program")],
  ["AVI ", 8, not("a video")],
  ["WAVE", 8, not("a sound recording")],
  ["\x1aE\xdf\xa3", 0, not("a video")],
  ["OggS", 0, not("a sound or video recording")],
  ["ID3", 0, not("a sound recording")],
  ["FLV\x01", 0, not("a video")],
  ["\0\0\x01\xba", 0, not("a video")],
];

/** What a file is by its content; its name and declared type are never asked. `bytes` may be the whole file. */
export function sniff(bytes: Uint8Array): Sniffed {
  const head = Buffer.from(bytes.buffer, bytes.byteOffset, Math.min(bytes.byteLength, 4096));
  const latin = head.toString("latin1");
  const known = signatures.find(([magic, at]) => latin.startsWith(magic, at));
  if (known) return known[2];
  return sniffBoxes(head) ?? not(looksLikeText(head) ?? "no kind of file known here");
}

/** ISO base media files (HEIF, AVIF, video) tell their kind by brands. */
function sniffBoxes(head: Buffer): Sniffed | null {
  const brands = boxBrands(head);
  if (brands === null) return null;
  const [major = "", ...compatible] = brands;
  const has = (...names: readonly string[]) => names.some((name) => brands.includes(name));
  if (/^(avif|avis)$/.test(major) || (/^(mif1|msf1)$/.test(major) && has("avif", "avis"))) {
    return unread("an AVIF picture");
  }
  if (major === "crx ") return { refuse: "photo-camera-raw", looksLike: "a camera's raw file" };
  if (/^(hevc|hevx|msf1)$/.test(major)) {
    return { refuse: "photo-many-pictures", looksLike: "a HEIC picture sequence" };
  }
  if (/^(heic|heix|mif1)$/.test(major)) return { format: "heif" };
  return compatible.includes("mif1") ? unread("a HEIF picture of an unusual kind") : not("a video");
}
