import { readFileSync } from "node:fs";
import sharp from "sharp";
import { describe, expect, test } from "vitest";
import { photoSentence } from "@/lib/photo";
import { chunk, colourType, image, noise, plate, pngFile, tiffFile } from "./build-files";
import { fate, send, stored, withStore } from "./store";

const fixture = (name: string) => readFileSync(new URL(`../../fixtures/photos/${name}`, import.meta.url));
const bytes = (text: string) => Buffer.from(text, "latin1");
const box = (brand: string, ...compatible: string[]) => {
  const content = bytes(`ftyp${brand}\0\0\0\0${compatible.join("")}`);
  const size = Buffer.alloc(4);
  size.writeUInt32BE(content.length + 4, 0);
  return Buffer.concat([size, content, Buffer.alloc(64)]);
};

describe("what is no photo is named by its content", () => {
  test.each([
    ["a web page", bytes("<!DOCTYPE html><html><script>alert(1)</script></html>")],
    ["a web page", bytes("  \n<script>alert(1)</script>")],
    [
      "an SVG drawing",
      bytes('<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"/>'),
    ],
    ["an SVG drawing", Buffer.from('\ufeff<svg xmlns="http://www.w3.org/2000/svg"/>')],
    ["an SVG drawing", Buffer.from('\ufeff<svg xmlns="http://www.w3.org/2000/svg"/>', "utf16le")],
    ["a script", bytes("#!/bin/sh\nrm -rf /\n")],
    ["a script", bytes("<?php system($_GET[0]); ?>")],
    ["a PDF document", bytes("%PDF-1.7\n%\xe2\xe3\xcf\xd3")],
    ["a zip archive or office document", bytes("PK\x03\x04\x14\0\0\0")],
    ["a program", bytes("MZ\x90\0\x03\0\0\0")],
    ["a program", bytes("\x7fELF\x02\x01\x01\0")],
    ["a video", box("mp42", "isom")],
    ["a video", box("qt  ")],
    ["a video", bytes("\x1aE\xdf\xa3\x01\0\0\0")],
    ["plain text", Buffer.from("Bead 7, 3.2 mm, größer")],
    ["no kind of file known here", Buffer.from([1, 2, 3, 4, 5, 6, 7, 8, 0, 0, 255])],
  ])("%s", (looksLike, file) =>
    withStore(async (dataDir) => {
      const answer = await send(dataDir, file);
      expect(answer.ok ? null : answer.issues).toEqual([
        { code: "photo-not-a-picture", path: [], data: { looksLike } },
      ]);
      if (!answer.ok) expect(photoSentence(answer.issues[0]!)).toContain(looksLike);
    }),
  );

  test.each([
    ["a GIF", bytes("GIF89a\x40\0\x40\0\0\0\0")],
    ["a BMP bitmap", bytes("BM\x36\0\0\0")],
    ["an AVIF picture", box("avif", "mif1", "miaf")],
    ["an AVIF picture", box("mif1", "avif", "miaf")],
    ["a JPEG XL picture", Buffer.from([0xff, 0x0a, 1, 2])],
  ])("%s is a picture, but not one read here", async (_what, file) =>
    expect(await fate(file)).toBe("photo-unsupported-picture"),
  );

  test("a real AVIF and a real GIF", async () => {
    expect(await fate(await image(plate()).avif({ effort: 0 }).toBuffer())).toBe("photo-unsupported-picture");
    expect(await fate(await image(plate()).gif().toBuffer())).toBe("photo-unsupported-picture");
  });

  test("camera raw files, which the picture reader would take for their preview", async () => {
    const page = { width: 160, height: 120, bits: 8, sample: 99 } as const;
    expect(await fate(tiffFile(page))).toBe("stored");
    expect(await fate(tiffFile({ ...page, tags: { 254: 1 } }))).toBe("photo-camera-raw");
    expect(await fate(tiffFile({ ...page, tags: { 50706: 0x0104 } }))).toBe("photo-camera-raw");
    expect(await fate(box("crx "))).toBe("photo-camera-raw");
  });
});

describe("more than one picture", () => {
  const frames = () => Promise.all([plate(), noise(320, 200)].map((raw) => image(raw).png().toBuffer()));

  test("animated WebP", async () => {
    const file = await sharp(await frames(), { join: { animated: true } })
      .webp()
      .toBuffer();
    expect((await sharp(file).metadata()).pages).toBe(2);
    expect(await fate(file)).toBe("photo-many-pictures");
  });

  test("animated PNG", async () => {
    const parts = { width: 80, height: 70, bits: 8, colour: colourType.gray, rows: Buffer.alloc(70 * 81) };
    const control = Buffer.from([0, 0, 0, 2, 0, 0, 0, 0]); // 2 frames, played for ever
    expect(await fate(pngFile(parts))).toBe("stored");
    expect(await fate(pngFile({ ...parts, extra: [chunk("acTL", control)] }))).toBe("photo-many-pictures");
  });

  test("TIFF of two pages", async () => {
    const page = { width: 120, height: 90, bits: 8, sample: 99 } as const;
    expect(await fate(tiffFile(page, page))).toBe("photo-many-pictures");
  });

  test("HEIC of two pictures, and a HEIC sequence", async () => {
    expect(await fate(fixture("two-plates.heic"))).toBe("photo-many-pictures");
    expect(await fate(box("hevc", "mif1"))).toBe("photo-many-pictures");
    expect(await fate(box("msf1", "hevc"))).toBe("photo-many-pictures");
  });
});

describe("damaged pictures", () => {
  const whole = image(noise(400, 300));
  test.each(["jpeg", "png", "webp", "tiff"] as const)("%s cut short", async (format) => {
    const file = await whole.clone().toFormat(format).toBuffer();
    expect(await fate(file)).toBe("stored");
    for (const share of [0.1, 0.5, 0.97]) {
      expect(await fate(file.subarray(0, Math.floor(file.length * share))), `${share}`).toBe("photo-damaged");
    }
  });

  test("HEIC cut short", async () => {
    const file = fixture("plate.heic");
    for (const share of [0.2, 0.5, 0.97]) {
      expect(await fate(file.subarray(0, Math.floor(file.length * share))), `${share}`).toBe("photo-damaged");
    }
  });

  test.each([
    ["jpeg", "\xff\xd8\xff\xe0"],
    ["png", "\x89PNG\r\n\x1a\n"],
    ["webp", "RIFF\x10\0\0\0WEBP"],
    ["tiff", "II*\0\x08\0\0\0"],
    ["heif", "\0\0\0\x18ftypheic\0\0\0\0mif1heic"],
  ])("a %s mark with a script behind it", async (_format, magic) =>
    expect(await fate(bytes(`${magic}<script>alert(1)</script>`.padEnd(300)))).toBe("photo-damaged"),
  );

  test("a scratch inside a JPEG that is otherwise whole is kept with a remark", () =>
    withStore(async (dataDir) => {
      const file = await whole.clone().jpeg().toBuffer();
      file.fill(0xff, file.length >> 1, (file.length >> 1) + 50);
      const { notices } = await stored(dataDir, file);
      expect(notices.map(({ code }) => code)).toEqual(["photo-damaged-in-places"]);
    }));
});

describe("size", () => {
  test("at least 64 px on both sides", async () => {
    expect(await fate(await image(noise(64, 64)).png().toBuffer())).toBe("stored");
    expect(await fate(await image(noise(63, 300)).png().toBuffer())).toBe("photo-too-small");
    expect(await fate(await image(noise(300, 63)).png().toBuffer())).toBe("photo-too-small");
  });
});
