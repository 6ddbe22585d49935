import { crc32, deflateSync } from "node:zlib";
import sharp, { type Sharp } from "sharp";

/** A picture in memory, 8 bit RGB. */
export interface Raw {
  readonly width: number;
  readonly height: number;
  readonly data: Buffer;
}
export type Rgb = readonly [number, number, number];

/** Top left, top right, bottom left, bottom right: every turn and every mirror shows. */
export const corners: readonly Rgb[] = [
  [208, 32, 32],
  [32, 160, 32],
  [32, 64, 208],
  [224, 192, 32],
];

/** A plate in four colours, one per corner. Not square, and no side equals another number used in these tests. */
export function plate(width = 320, height = 200): Raw {
  return fromPixels(width, height, (x, y) => corners[(x < width / 2 ? 0 : 1) + (y < height / 2 ? 0 : 2)]!);
}

export function fromPixels(width: number, height: number, at: (x: number, y: number) => Rgb): Raw {
  const data = Buffer.alloc(width * height * 3);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) data.set(at(x, y), (y * width + x) * 3);
  }
  return { width, height, data };
}

export function pixelAt({ width, data }: Raw, x: number, y: number): Rgb {
  const at = (y * width + x) * 3;
  return [data[at]!, data[at + 1]!, data[at + 2]!];
}

/** `scale` repeats a picture's noise so that compressed files get long enough to be cut. */
export function noise(width: number, height: number): Raw {
  let seed = 12345;
  const next = () => (seed = (seed * 1103515245 + 12345) % 2147483648) >> 16;
  return fromPixels(width, height, () => [next() & 255, next() & 255, next() & 255]);
}

export function image({ width, height, data }: Raw): Sharp {
  return sharp(data, { raw: { width, height, channels: 3 } });
}

/** The pixels a reader sees, three channels. */
export async function pixelsOf(file: string | Buffer): Promise<Raw> {
  const { data, info } = await sharp(file).raw().toBuffer({ resolveWithObject: true });
  if (info.channels !== 3) throw new Error(`expected 3 channels, got ${info.channels}`);
  return { width: info.width, height: info.height, data };
}

// PNG (PNG Third Edition), written by hand so that headers can lie and chunks can be added.
const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);

export function chunk(type: string, content: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, "latin1"), content]);
  const out = Buffer.alloc(body.length + 8);
  out.writeUInt32BE(content.length, 0);
  body.copy(out, 4);
  out.writeUInt32BE(crc32(body), body.length + 4);
  return out;
}

export const colourType = { gray: 0, rgb: 2, rgba: 6 } as const;

export interface PngParts {
  readonly width: number;
  readonly height: number;
  readonly bits: number;
  readonly colour: number;
  /** Rows as stored, each led by its filter byte. */
  readonly rows: Buffer;
  /** Between IHDR and IDAT. */
  readonly extra?: readonly Buffer[];
}

export function pngFile({ width, height, bits, colour, rows, extra = [] }: PngParts): Buffer {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header[8] = bits;
  header[9] = colour;
  const data = chunk("IDAT", deflateSync(rows));
  return Buffer.concat([signature, chunk("IHDR", header), ...extra, data, chunk("IEND", Buffer.alloc(0))]);
}

/** Rows of one and the same 16-bit sample vector. */
export function flat16(width: number, height: number, samples: readonly number[]): Buffer {
  const row = Buffer.alloc(1 + width * samples.length * 2);
  for (let x = 0; x < width; x += 1) {
    samples.forEach((sample, index) => row.writeUInt16BE(sample, 1 + (x * samples.length + index) * 2));
  }
  return Buffer.concat(Array.from({ length: height }, () => row));
}

// Exif in JPEG: a TIFF structure with one entry, in an APP1 segment behind SOI.
export function withApp1(jpeg: Buffer, content: Buffer): Buffer {
  const segment = Buffer.alloc(4);
  segment.writeUInt16BE(0xffe1, 0);
  segment.writeUInt16BE(content.length + 2, 2);
  return Buffer.concat([jpeg.subarray(0, 2), segment, content, jpeg.subarray(2)]);
}

export function exifBlock(orientation: number): Buffer {
  const tiff = Buffer.from([
    0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, 1, 1, 0x12, 0, 3, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0, 0,
  ]);
  tiff.writeUInt16BE(orientation, 18);
  return Buffer.concat([Buffer.from("Exif\0\0", "latin1"), tiff]);
}

/** One uncompressed page of a TIFF 6.0 file, gray, 8 or 16 bit. */
export interface TiffPage {
  readonly width: number;
  readonly height: number;
  readonly bits: 8 | 16;
  readonly sample: number;
  readonly tags?: Readonly<Record<number, number>>;
}

export function tiffFile(...pages: readonly TiffPage[]): Buffer {
  const parts: Buffer[] = [Buffer.from([0x49, 0x49, 42, 0, 8, 0, 0, 0])];
  let at = 8;
  pages.forEach((page, index) => {
    const { width, height, bits, sample, tags = {} } = page;
    const bytes = (width * height * bits) / 8;
    const data = Buffer.alloc(bytes);
    for (let i = 0; i < width * height; i += 1) {
      if (bits === 16) data.writeUInt16LE(sample, i * 2);
      else data[i] = sample;
    }
    const all: Record<number, number> = {
      256: width,
      257: height,
      258: bits,
      259: 1,
      262: 1,
      277: 1,
      278: height,
      279: bytes,
      ...tags,
    };
    const count = Object.keys(all).length + 1;
    const directory = Buffer.alloc(2 + count * 12 + 4);
    all[273] = at + directory.length;
    directory.writeUInt16LE(count, 0);
    Object.entries(all)
      .sort(([a], [b]) => Number(a) - Number(b))
      .forEach(([tag, value], entry) => {
        directory.writeUInt16LE(Number(tag), 2 + entry * 12);
        directory.writeUInt16LE(4, 4 + entry * 12); // LONG
        directory.writeUInt32LE(1, 6 + entry * 12);
        directory.writeUInt32LE(value, 10 + entry * 12);
      });
    const next = at + directory.length + bytes;
    directory.writeUInt32LE(index === pages.length - 1 ? 0 : next, directory.length - 4);
    parts.push(directory, data);
    at = next;
  });
  return Buffer.concat(parts);
}
