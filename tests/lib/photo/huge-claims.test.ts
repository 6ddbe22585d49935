import { expect, test } from "vitest";
import { colourType, pngFile } from "./build-files";
import { fate, send, withStore } from "./store";

/** Peak memory of this process, MB. This file is run in a process of its own, so earlier peaks are not in the way. */
const peakMb = () => process.resourceUsage().maxRSS / 1024;
const gray = (width: number, height: number, rows: Buffer) =>
  pngFile({ width, height, bits: 1, colour: colourType.gray, rows });

test("a header that claims 40000 x 40000 pixels is refused by the header", () =>
  withStore(async (dataDir) => {
    const before = peakMb();
    const answer = await send(dataDir, gray(40_000, 40_000, Buffer.alloc(1000)));
    expect(answer.ok ? null : answer.issues).toEqual([
      {
        code: "photo-too-many-pixels",
        path: [],
        data: { widthPx: 40_000, heightPx: 40_000, maxPixels: 64_000_000 },
      },
    ]);
    expect(peakMb() - before).toBeLessThan(150); // the picture alone would take 1600
  }));

test("a real picture of 400 megapixels in a small file likewise", async () => {
  const side = 20_000;
  const file = gray(side, side, Buffer.alloc(side * (1 + side / 8)));
  expect(file.length).toBeLessThan(200_000);
  const before = peakMb();
  expect(await fate(file)).toBe("photo-too-many-pixels");
  expect(peakMb() - before).toBeLessThan(150);
});

test("64 megapixels are the last that are taken in", async () => {
  const rows = (width: number, height: number) => Buffer.alloc(height * (1 + Math.ceil(width / 8)));
  expect(await fate(gray(8000, 8000, rows(8000, 8000)))).toBe("stored");
  expect(await fate(gray(8000, 8001, rows(8000, 8001)))).toBe("photo-too-many-pixels");
});
