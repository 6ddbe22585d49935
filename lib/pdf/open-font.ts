import { readFileSync } from "node:fs";
import { inflateSync } from "node:zlib";

/** Bytes of the header and of each row of the list of tables: WOFF 1.0 (W3C 2012), sections 4 and 5; OpenType's own. */
const WOFF = { header: 44, row: 20 } as const;
const SFNT = { header: 12, row: 16 } as const;

const opened = new Map<string, Buffer>();

/**
 * A font file as pdfkit reads it quickest: laid open once and kept. Left packed, every paper would unpack its tables again, by
 * a reader that takes half of the paper's time for it.
 */
export function openFont(file: string): Buffer {
  const open = opened.get(file) ?? unpackWoff(readFileSync(file));
  opened.set(file, open);
  return open;
}

const padded = (length: number): number => Math.ceil(length / 4) * 4;

/** The OpenType font inside a WOFF file, table by table in the same order. */
export function unpackWoff(woff: Buffer): Buffer {
  const count = woff.readUInt16BE(12);
  const tables = Array.from({ length: count }, (_, i) => tableOf(woff, WOFF.header + i * WOFF.row));
  const start = SFNT.header + count * SFNT.row;
  const size = tables.reduce((sum, { bytes }) => sum + padded(bytes.length), start);
  const open = Buffer.alloc(size);
  open.writeUInt32BE(woff.readUInt32BE(4), 0);
  open.writeUInt16BE(count, 4);
  const power = Math.floor(Math.log2(count));
  open.writeUInt16BE(16 * 2 ** power, 6);
  open.writeUInt16BE(power, 8);
  open.writeUInt16BE(16 * count - 16 * 2 ** power, 10);
  let at = start;
  for (const [i, { tag, checksum, bytes }] of tables.entries()) {
    const row = SFNT.header + i * SFNT.row;
    open.writeUInt32BE(tag, row);
    open.writeUInt32BE(checksum, row + 4);
    open.writeUInt32BE(at, row + 8);
    open.writeUInt32BE(bytes.length, row + 12);
    bytes.copy(open, at);
    at += padded(bytes.length);
  }
  return open;
}

/** One table; it is packed only where that made it shorter. */
function tableOf(woff: Buffer, row: number) {
  const [offset, packed, length] = [4, 8, 12].map((at) => woff.readUInt32BE(row + at)) as [
    number,
    number,
    number,
  ];
  const bytes = woff.subarray(offset, offset + packed);
  return {
    tag: woff.readUInt32BE(row),
    checksum: woff.readUInt32BE(row + 16),
    bytes: packed < length ? inflateSync(bytes) : bytes,
  };
}
