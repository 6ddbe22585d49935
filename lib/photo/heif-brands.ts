/** Brands of an ISO base media file (ISO/IEC 14496-12, box `ftyp`), the major one first; null when it is none. */
export function boxBrands(head: Buffer): readonly string[] | null {
  if (head.length < 16 || head.toString("latin1", 4, 8) !== "ftyp") return null;
  const end = Math.min(head.readUInt32BE(0), head.length);
  const brands = [head.toString("latin1", 8, 12)];
  // 12..16 is the minor version.
  for (let at = 16; at + 4 <= end; at += 4) brands.push(head.toString("latin1", at, at + 4));
  return brands;
}
