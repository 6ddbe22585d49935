/** One file of an archive: its length and CRC-32 are known before its bytes are read. Names are ASCII. */
export interface ZipEntry {
  readonly name: string;
  readonly bytes: number;
  readonly crc32: number;
}

/** A piece of the archive in its order: bytes as they are, or "now the bytes of this entry". */
export type ZipPart<E extends ZipEntry> = { readonly bytes: Uint8Array } | { readonly entry: E };

const LOCAL = 0x04034b50;
const CENTRAL = 0x02014b50;
const END = 0x06054b50;
/** Version 2.0 of the format: folders and plain files. */
const VERSION = 20;
/** 1 January 1980, 12:00:00: the same everywhere, because ZIP keeps local time without a zone. */
const FIXED_TIME = 12 << 11;
const FIXED_DAY = (1 << 5) | 1;

/** Little-endian numbers of 2 or 4 bytes, one after the other. */
function fields(...values: readonly (readonly [bytes: 2 | 4, value: number])[]): Uint8Array {
  const out = new Uint8Array(values.reduce((sum, [bytes]) => sum + bytes, 0));
  const view = new DataView(out.buffer);
  let at = 0;
  for (const [bytes, value] of values) {
    if (bytes === 2) view.setUint16(at, value, true);
    else view.setUint32(at, value, true);
    at += bytes;
  }
  return out;
}

const ascii = (text: string): Uint8Array => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

function together(...parts: readonly Uint8Array[]): Uint8Array {
  const out = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    out.set(part, at);
    at += part.length;
  }
  return out;
}

/** What a local header and the directory say alike: how, when, checksum, lengths. Stored: both lengths are the file's. */
const facts = ({ name, bytes, crc32 }: ZipEntry): Uint8Array =>
  fields(
    [2, 0],
    [2, 0],
    [2, FIXED_TIME],
    [2, FIXED_DAY],
    [4, crc32],
    [4, bytes],
    [4, bytes],
    [2, name.length],
    [2, 0],
  );

const localHeader = (entry: ZipEntry): Uint8Array =>
  together(fields([4, LOCAL], [2, VERSION]), facts(entry), ascii(entry.name));

const directoryEntry = (entry: ZipEntry, at: number): Uint8Array =>
  together(
    fields([4, CENTRAL], [2, VERSION], [2, VERSION]),
    facts(entry),
    fields([2, 0], [2, 0], [2, 0], [4, 0], [4, at]),
    ascii(entry.name),
  );

/**
 * A ZIP of stored files, to be written as it goes: its parts in order, and its length. Names are sorted, times fixed,
 * nothing compressed, so that the same files always give the same bytes. PKWARE APPNOTE 4.3, without ZIP64: files and the
 * whole stay below 4 GiB, which whoever calls sees to.
 */
export function storedZip<E extends ZipEntry>(
  entries: readonly E[],
): { readonly bytes: number; readonly parts: readonly ZipPart<E>[] } {
  const sorted = entries.toSorted((a, b) => (a.name < b.name ? -1 : 1));
  const parts: ZipPart<E>[] = [];
  const directory: Uint8Array[] = [];
  let at = 0;
  for (const entry of sorted) {
    const header = localHeader(entry);
    directory.push(directoryEntry(entry, at));
    parts.push({ bytes: header }, { entry });
    at += header.length + entry.bytes;
  }
  const list = together(...directory);
  const count = sorted.length;
  const end = fields([4, END], [2, 0], [2, 0], [2, count], [2, count], [4, list.length], [4, at], [2, 0]);
  parts.push({ bytes: list }, { bytes: end });
  return { bytes: at + list.length + end.length, parts };
}
