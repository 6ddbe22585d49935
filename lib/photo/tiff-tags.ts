/** Tags read here: TIFF 6.0 section 8, DNG 1.x, Exif 2.3 (the same number in both). */
export const tiffTag = { newSubfileType: 254, orientation: 274, dngVersion: 50706 } as const;

export interface FirstDirectory {
  /** Values of the entries whose count is small enough to lie inside the entry: SHORT, LONG, BYTE. */
  readonly values: ReadonlyMap<number, number>;
  /** False when the directory claims more entries than there are bytes for. */
  readonly complete: boolean;
}

const SHORT = 3;
const LONG = 4;
const ENTRY_BYTES = 12;

/** The first directory of a TIFF structure (a TIFF file or an Exif block); null when there is none to read. */
export function readFirstDirectory(bytes: Uint8Array): FirstDirectory | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (view.byteLength < 8) return null;
  const order = view.getUint16(0);
  if (order !== 0x4949 && order !== 0x4d4d) return null;
  const little = order === 0x4949;
  const at = view.getUint32(4, little);
  if (view.getUint16(2, little) !== 42 || at + 2 > view.byteLength) return null;
  const claimed = view.getUint16(at, little);
  const present = Math.min(claimed, Math.floor((view.byteLength - at - 2) / ENTRY_BYTES));
  const values = new Map<number, number>();
  for (let index = 0; index < present; index += 1) {
    const entry = at + 2 + index * ENTRY_BYTES;
    const type = view.getUint16(entry + 2, little);
    const value =
      type === SHORT
        ? view.getUint16(entry + 8, little)
        : type === LONG
          ? view.getUint32(entry + 8, little)
          : view.getUint8(entry + 8);
    values.set(view.getUint16(entry, little), value);
  }
  return { values, complete: present === claimed };
}
