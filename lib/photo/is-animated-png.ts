/** Whether a PNG carries an animation: an `acTL` chunk before the first `IDAT` (PNG Third Edition, 11.3.6.1). */
export function isAnimatedPng(bytes: Buffer): boolean {
  let at = 8;
  while (at + 8 <= bytes.length) {
    const type = bytes.toString("latin1", at + 4, at + 8);
    if (type === "acTL") return true;
    if (type === "IDAT" || type === "IEND") return false;
    at += 12 + bytes.readUInt32BE(at);
  }
  return false;
}
