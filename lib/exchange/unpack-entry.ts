import { Inflate } from "fflate";
import { fail, issue, ok, type Result } from "@/lib/base";
import type { ExchangeIssue } from "./issue";
import type { ZipEntry } from "./zip-directory";

/** Deflate grows by 1032 at most, so a piece of this size becomes 4 MB before it is counted. */
const PIECE_BYTES = 4096;

class GrewTooLarge extends Error {}

/**
 * One file of a ZIP, counted while it comes out: it may not be larger than declared, whatever it claims to be.
 * Issues: `archive-too-large`, `archive-unreadable`.
 */
export function unpackEntry(entry: ZipEntry, mostBytes: number): Result<Uint8Array, ExchangeIssue> {
  const { name, bytes, packed } = entry;
  if (bytes > mostBytes) return fail(issue("archive-too-large", [], { name, bytes, most: mostBytes }));
  if (entry.method === 0)
    return packed.length === bytes ? ok(packed.slice()) : fail(issue("archive-unreadable", [], { name }));
  const pieces: Uint8Array[] = [];
  let count = 0;
  const inflate = new Inflate((piece) => {
    count += piece.length;
    if (count > bytes) throw new GrewTooLarge();
    pieces.push(piece);
  });
  try {
    for (let at = 0; at < packed.length; at += PIECE_BYTES)
      inflate.push(packed.subarray(at, at + PIECE_BYTES), at + PIECE_BYTES >= packed.length);
  } catch (error) {
    return error instanceof GrewTooLarge
      ? fail(issue("archive-too-large", [], { name, bytes: count, most: bytes }))
      : fail(issue("archive-unreadable", [], { name }));
  }
  return count === bytes ? ok(join(pieces, count)) : fail(issue("archive-unreadable", [], { name }));
}

function join(pieces: readonly Uint8Array[], bytes: number): Uint8Array {
  const whole = new Uint8Array(bytes);
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
