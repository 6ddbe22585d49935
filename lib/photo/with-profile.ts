import { crc32, deflateSync } from "node:zlib";
import sharp from "sharp";
import type { Pixels } from "./pixels";

/**
 * The same pixels as an uncompressed PNG that carries a colour profile, so that the ordinary reader converts it.
 * Needed for HEIF alone: its decoder hands out bare numbers, and phones write Display P3.
 */
export async function withProfile({ data, widthPx, heightPx }: Pixels, profile: Buffer): Promise<Buffer> {
  const raw = { width: widthPx, height: heightPx, channels: 3 as const };
  const png = await sharp(data, { raw }).png({ compressionLevel: 0 }).toBuffer();
  // Signature 8 bytes, then IHDR: 12 + 13. An iCCP chunk stands before the pixels (PNG Third Edition, 5.6).
  const afterHeader = 8 + 12 + 13;
  return Buffer.concat([png.subarray(0, afterHeader), profileChunk(profile), png.subarray(afterHeader)]);
}

/** iCCP: a name, a zero, compression method 0, the deflated profile; then CRC over type and content. */
function profileChunk(profile: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from("iCCPprofile\0\0", "latin1"), deflateSync(profile)]);
  const chunk = Buffer.alloc(body.length + 8);
  chunk.writeUInt32BE(body.length - 4, 0);
  body.copy(chunk, 4);
  chunk.writeUInt32BE(crc32(body), body.length + 4);
  return chunk;
}
