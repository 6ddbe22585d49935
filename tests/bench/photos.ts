import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import sharp from "sharp";

const root = fileURLToPath(new URL("../..", import.meta.url));
const DEMO = path.join(root, "demo-images/set/tee-porosity-soot.jpg");

/** 48 megapixels. */
export const WIDTH = 8000;
export const HEIGHT = 6000;

/** A bead of the demo at a camera's size, as a camera would store it. `seed` makes each another file. */
export function cameraJpeg(width: number, height: number, seed = 0): Promise<Buffer> {
  return sharp(readFileSync(DEMO))
    .resize(width, height, { fit: "fill" })
    .modulate({ brightness: 1 + seed / 200 })
    .jpeg({ quality: 85 })
    .toBuffer();
}

/** The same picture as another file: a comment behind the first marker. */
export function withComment(jpeg: Buffer, text: string): Buffer {
  const words = Buffer.from(text);
  const head = Buffer.from([0xff, 0xfe, 0, 0]);
  head.writeUInt16BE(words.length + 2, 2);
  return Buffer.concat([jpeg.subarray(0, 2), head, words, jpeg.subarray(2)]);
}

/** The same for HEIC: a box at its end that says nothing (ISO/IEC 14496-12, 8.1.2). */
export function withFreeBox(heic: Buffer, text: string): Buffer {
  const words = Buffer.from(text);
  const head = Buffer.alloc(8);
  head.writeUInt32BE(8 + words.length);
  head.write("free", 4, "latin1");
  return Buffer.concat([heic, head, words]);
}

/**
 * As a phone stores it, by heif-enc (Debian package libheif-examples; TOELINE_HEIF_ENC names another place); null where there
 * is none: nothing that npm offers writes HEVC. Kept, since it takes a minute.
 */
export async function cameraHeic(width: number, height: number): Promise<Buffer | null> {
  const folder = path.join(root, "tests/.out/bench");
  const [jpeg, heic] = ["jpg", "heic"].map((end) => path.join(folder, `${width}x${height}.${end}`)) as [
    string,
    string,
  ];
  if (existsSync(heic)) return readFileSync(heic);
  mkdirSync(folder, { recursive: true });
  writeFileSync(jpeg, await cameraJpeg(width, height));
  try {
    execFileSync(process.env["TOELINE_HEIF_ENC"] || "heif-enc", ["-q", "60", jpeg, "-o", heic], {
      stdio: "ignore",
    });
  } catch {
    return null;
  }
  return readFileSync(heic);
}
