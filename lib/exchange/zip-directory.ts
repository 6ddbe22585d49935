import { fail, issue, ok, type Result } from "@/lib/base";
import type { ExchangeIssue } from "./issue";

/** One file of a ZIP as its central directory states it. PKWARE APPNOTE 6.3, sections 4.3.7, 4.3.12, 4.3.16. */
export interface ZipEntry {
  readonly name: string;
  /** 0: stored, 8: deflated. */
  readonly method: number;
  readonly packedBytes: number;
  /** As declared; what comes out is counted again. */
  readonly bytes: number;
  readonly packed: Uint8Array;
}

const END = 0x06054b50;
const CENTRAL = 0x02014b50;
const LOCAL = 0x04034b50;
const END_SIZE = 22;
const CENTRAL_SIZE = 46;
const LOCAL_SIZE = 30;
const ENCRYPTED = 1;

/**
 * The files of a ZIP by its central directory, in its order. Strict: one disk, no ZIP64, no encryption, stored or
 * deflated, and each local header names the same file. Issues: `archive-not-zip`, `archive-unreadable`.
 */
export function zipDirectory(bytes: Uint8Array): Result<readonly ZipEntry[], ExchangeIssue> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = findEnd(view);
  if (end === null) return fail(issue("archive-not-zip"));
  const count = view.getUint16(end + 10, true);
  const start = view.getUint32(end + 16, true);
  const size = view.getUint32(end + 12, true);
  const oneDisk = view.getUint16(end + 4, true) === 0 && view.getUint16(end + 8, true) === count;
  if (!oneDisk || start + size > end) return fail(issue("archive-not-zip"));
  const entries: ZipEntry[] = [];
  let at = start;
  for (let i = 0; i < count; i++) {
    if (at + CENTRAL_SIZE > end || view.getUint32(at, true) !== CENTRAL)
      return fail(issue("archive-not-zip"));
    const nameBytes = view.getUint16(at + 28, true);
    const next =
      at + CENTRAL_SIZE + nameBytes + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
    if (next > end) return fail(issue("archive-not-zip"));
    const name = asName(bytes.subarray(at + CENTRAL_SIZE, at + CENTRAL_SIZE + nameBytes));
    const entry = readEntry(bytes, view, at, name, start);
    if (!entry) return fail(issue("archive-unreadable", [], { name }));
    entries.push(entry);
    at = next;
  }
  return ok(entries);
}

/** The end record stands last; only a comment may follow, and then exactly to the end of the file. */
function findEnd(view: DataView): number | null {
  const last = view.byteLength - END_SIZE;
  for (let at = last; at >= Math.max(0, last - 0xffff); at--)
    if (view.getUint32(at, true) === END && view.getUint16(at + 20, true) === last - at) return at;
  return null;
}

/** Byte by byte: our own names are ASCII, and any other is refused by whoever looks at it. */
const asName = (bytes: Uint8Array): string => Array.from(bytes, (b) => String.fromCharCode(b)).join("");

function readEntry(
  bytes: Uint8Array,
  view: DataView,
  at: number,
  name: string,
  directoryStart: number,
): ZipEntry | null {
  const method = view.getUint16(at + 10, true);
  const packedBytes = view.getUint32(at + 20, true);
  const local = view.getUint32(at + 42, true);
  if (view.getUint16(at + 8, true) & ENCRYPTED || (method !== 0 && method !== 8)) return null;
  if (local + LOCAL_SIZE > directoryStart || view.getUint32(local, true) !== LOCAL) return null;
  const nameEnd = local + LOCAL_SIZE + view.getUint16(local + 26, true);
  const from = nameEnd + view.getUint16(local + 28, true);
  if (from + packedBytes > directoryStart) return null;
  if (asName(bytes.subarray(local + LOCAL_SIZE, nameEnd)) !== name) return null;
  const packed = bytes.subarray(from, from + packedBytes);
  return { name, method, packedBytes, bytes: view.getUint32(at + 24, true), packed };
}
