import { readFileSync } from "node:fs";
import { readFile, writeFile } from "node:fs/promises";
import exifr from "exifr";
import { describe, expect, test } from "vitest";
import sharp from "sharp";
import { pagePicture, photoSizes, type PhotoSize, type ReceivedPhoto } from "@/lib/photo";
import { viewPath } from "@/lib/photo/paths";
import {
  colourType,
  corners,
  exifBlock,
  flat16,
  fromPixels,
  image,
  noise,
  pixelAt,
  pixelsOf,
  plate,
  pngFile,
  tiffFile,
  withApp1,
  type Raw,
  type Rgb,
} from "./build-files";
import { stored, withStore } from "./store";

const fixture = (name: string) => readFileSync(new URL(`../../fixtures/photos/${name}`, import.meta.url));
/** Flat colours through one or two lossy encodings at quality 80 to 100: a few steps of 255. */
const LOSSY = 6;

function expectColour(actual: Rgb, expected: Rgb, tolerance = LOSSY): void {
  const off = Math.max(...actual.map((channel, index) => Math.abs(channel - expected[index]!)));
  expect(off, `${actual} against ${expected}`).toBeLessThanOrEqual(tolerance);
}

function expectCorners(seen: Raw, tolerance = LOSSY): void {
  const { width, height } = seen;
  const [right, low] = [width - 10, height - 10];
  const found = [
    pixelAt(seen, 9, 9),
    pixelAt(seen, right, 9),
    pixelAt(seen, 9, low),
    pixelAt(seen, right, low),
  ];
  found.forEach((colour, index) => expectColour(colour, corners[index]!, tolerance));
}

/** Takes a file in and looks at one derived picture. */
async function view(
  bytes: Buffer,
  look: (seen: Raw, photo: ReceivedPhoto) => void,
  size: PhotoSize = "view",
) {
  await withStore(async (dataDir) => {
    const photo = await stored(dataDir, bytes);
    look(await pixelsOf(viewPath(dataDir, photo.sha256, size)!), photo);
  });
}

test("the matcher notices a turned plate", () => {
  const { width, height, data } = plate();
  const turned = fromPixels(width, height, (x, y) =>
    pixelAt({ width, height, data }, width - 1 - x, height - 1 - y),
  );
  expectCorners(plate(), 0);
  expect(() => expectCorners(turned)).toThrow();
  expect(() => expectColour([100, 0, 0], [100, 0, 7])).toThrow();
});

describe("Exif orientation", () => {
  /**
   * Exif 2.3, tag 274 (from memory): which side of the upright picture the stored 0th row and 0th column are.
   * `stored(row, column)` gives the upright pixel.
   */
  const [W, H] = [320, 200];
  const storedAs: Readonly<Record<number, (row: number, column: number) => readonly [x: number, y: number]>> =
    {
      1: (r, c) => [c, r], //                    row 0 top,    column 0 left
      2: (r, c) => [W - 1 - c, r], //            row 0 top,    column 0 right
      3: (r, c) => [W - 1 - c, H - 1 - r], //    row 0 bottom, column 0 right
      4: (r, c) => [c, H - 1 - r], //            row 0 bottom, column 0 left
      5: (r, c) => [r, c], //                    row 0 left,   column 0 top
      6: (r, c) => [W - 1 - r, c], //            row 0 right,  column 0 top
      7: (r, c) => [W - 1 - r, H - 1 - c], //    row 0 right,  column 0 bottom
      8: (r, c) => [r, H - 1 - c], //            row 0 left,   column 0 bottom
    };
  const upright = plate(W, H);
  const storedPlate = (orientation: number) => {
    const [width, height] = orientation >= 5 ? [H, W] : [W, H];
    return fromPixels(width, height, (x, y) => pixelAt(upright, ...storedAs[orientation]!(y, x)));
  };

  test.each([1, 2, 3, 4, 5, 6, 7, 8])("%d gives the same upright JPEG", async (orientation) => {
    const jpeg = await image(storedPlate(orientation))
      .jpeg({ quality: 95, chromaSubsampling: "4:4:4" })
      .toBuffer();
    await view(withApp1(jpeg, exifBlock(orientation)), (seen, photo) => {
      expect([photo.widthPx, photo.heightPx, photo.notices]).toEqual([W, H, []]);
      expect([seen.width, seen.height]).toEqual([W, H]);
      expectCorners(seen);
    });
  });

  test("is read from PNG, WebP and TIFF as well", async () => {
    for (const format of ["png", "webp", "tiff"] as const) {
      const file = await image(storedPlate(6))
        .withMetadata({ orientation: 6 })
        .toFormat(format, { quality: 95 })
        .toBuffer();
      await view(file, (seen, photo) => {
        expect([photo.format, photo.widthPx, photo.heightPx, photo.notices]).toEqual([format, W, H, []]);
        expectCorners(seen, 10); // WebP keeps colour at half resolution
      });
    }
  });

  const mark = Buffer.from("Exif\0\0", "latin1");
  test.each([
    ["garbage", Buffer.concat([mark, Buffer.from("not a tiff structure")])],
    ["cut off in its header", Buffer.concat([mark, Buffer.from("MM\0")])],
    [
      "pointing outside itself",
      Buffer.concat([mark, Buffer.from([0x49, 0x49, 42, 0, 255, 255, 0, 0, 1, 0])]),
    ],
    ["claiming orientation 9", exifBlock(9)],
    ["claiming orientation 0", exifBlock(0)],
    ["cut off before its first entry", exifBlock(6).subarray(0, 18)],
  ])("a block %s keeps the photo upright as stored, and says so", async (_name, block) => {
    const jpeg = await image(plate()).jpeg({ quality: 95 }).toBuffer();
    await view(withApp1(jpeg, block), (seen, photo) => {
      expect(photo.notices.map(({ code }) => code)).toEqual(["photo-orientation-unreadable"]);
      expect([photo.widthPx, photo.heightPx]).toEqual([320, 200]);
      expectCorners(seen);
    });
  });
});

describe("HEIC", () => {
  test("is decoded upright", () =>
    view(fixture("plate.heic"), (seen, photo) => {
      expect([photo.format, photo.widthPx, photo.heightPx, photo.notices]).toEqual(["heif", 320, 200, []]);
      expectCorners(seen);
    }));

  test("is turned once, by the file's own rotation, though Exif says it again", () =>
    view(fixture("plate-turned.heic"), (seen, photo) => {
      expect([photo.widthPx, photo.heightPx, seen.width, seen.height]).toEqual([320, 200, 320, 200]);
      expectCorners(seen);
    }));

  /**
   * Display P3 to sRGB by the matrix of CSS Color Module Level 4 (section "Sample code", from memory); both use the
   * sRGB transfer curve. The stored numbers are those the file holds for the red corner.
   */
  test("is converted from its colour profile", async () => {
    const linear = (v: number) => (v / 255 <= 0.04045 ? v / 255 / 12.92 : ((v / 255 + 0.055) / 1.055) ** 2.4);
    const curve = (v: number) => 255 * (v <= 0.0031308 ? v * 12.92 : 1.055 * v ** (1 / 2.4) - 0.055);
    const [r, g, b] = [191, 53, 43].map(linear) as [number, number, number];
    const expected = [
      1.2249401762805598 * r - 0.22494017628055996 * g,
      -0.042056954709688163 * r + 1.0420569547096881 * g,
      -0.019637554590334432 * r - 0.078636045550631889 * g + 1.0982736001409663 * b,
    ].map(curve) as unknown as Rgb;
    expect(Math.abs(expected[0] - 191)).toBeGreaterThan(LOSSY); // otherwise the check would hold unconverted
    await view(fixture("plate-p3.heic"), (seen) => expectColour(pixelAt(seen, 9, 9), expected));
  });
});

describe("colour and depth", () => {
  test("16-bit PNG, with and without colour, keeps its middle gray", async () => {
    for (const [colour, samples] of [
      [colourType.rgb, [0x8000, 0x8000, 0x8000]],
      [colourType.gray, [0x8000]],
    ] as const) {
      const rows = flat16(120, 90, samples);
      await view(pngFile({ width: 120, height: 90, bits: 16, colour, rows }), (seen) =>
        expectColour(pixelAt(seen, 60, 45), [128, 128, 128], 1),
      );
    }
  });

  test("16-bit TIFF", () =>
    view(tiffFile({ width: 120, height: 90, bits: 16, sample: 0x8000 }), (seen, photo) => {
      expect(photo.format).toBe("tiff");
      expectColour(pixelAt(seen, 60, 45), [128, 128, 128], 1);
    }));

  test("what is transparent becomes white", async () => {
    const rows = flat16(120, 90, [0x1000, 0x1000, 0x1000, 0]);
    await view(pngFile({ width: 120, height: 90, bits: 16, colour: colourType.rgba, rows }), (seen) =>
      expectColour(pixelAt(seen, 60, 45), [255, 255, 255], 1),
    );
  });

  test("gray JPEG becomes three equal channels", async () => {
    const gray = await sharp({ create: { width: 120, height: 90, channels: 3, background: "#606060" } })
      .toColourspace("b-w")
      .jpeg()
      .toBuffer();
    expect((await sharp(gray).metadata()).channels).toBe(1);
    await view(gray, (seen) => expectColour(pixelAt(seen, 60, 45), [0x60, 0x60, 0x60], 2));
  });

  test("CMYK JPEG keeps white white, black dark and red red", async () => {
    const patches = fromPixels(300, 100, (x) =>
      x < 100 ? [255, 255, 255] : x < 200 ? [0, 0, 0] : [220, 30, 30],
    );
    const cmyk = await image(patches).toColourspace("cmyk").jpeg({ quality: 95 }).toBuffer();
    expect((await sharp(cmyk).metadata()).space).toBe("cmyk");
    await view(cmyk, (seen) => {
      expectColour(pixelAt(seen, 50, 50), [255, 255, 255], 4);
      expect(Math.max(...pixelAt(seen, 150, 50))).toBeLessThan(70); // press black is no monitor black
      const [red, green, blue] = pixelAt(seen, 250, 50);
      expect(red).toBeGreaterThan(180);
      expect(Math.max(green, blue)).toBeLessThan(90);
    });
  });

  test("a Display P3 JPEG is converted", async () => {
    const p3 = await image(plate())
      .withIccProfile("p3")
      .jpeg({ quality: 95, chromaSubsampling: "4:4:4" })
      .toBuffer();
    const bare = await sharp(p3, { ignoreIcc: true }).raw().toBuffer();
    expect(Math.abs(bare[(9 * 320 + 9) * 3]! - corners[0]![0])).toBeGreaterThan(LOSSY);
    await view(p3, (seen) => expectCorners(seen));
  });
});

describe("derived pictures", () => {
  test.each([
    ["view", 4096, 2048],
    ["small", 1600, 800],
    ["thumb", 480, 240],
  ] as const)(
    "%s of 5000 x 2500 is %d x %d; the drawing's frame stays the original's",
    async (size, width, height) => {
      const big = await sharp({ create: { width: 5000, height: 2500, channels: 3, background: "#446688" } })
        .jpeg()
        .toBuffer();
      await view(
        big,
        (seen, photo) => {
          expect([seen.width, seen.height]).toEqual([width, height]);
          expect([photo.widthPx, photo.heightPx]).toEqual([5000, 2500]);
          expect([photo.viewWidthPx, photo.viewHeightPx]).toEqual([4096, 2048]);
        },
        size,
      );
    },
  );

  test("the one for a phone's page is made of small: 900 pixels, WebP, nothing of the camera; none where there is no photo", () =>
    withStore(async (dataDir) => {
      const big = await sharp({ create: { width: 3000, height: 1500, channels: 3, background: "#446688" } })
        .withExif({ IFD0: { Make: "INVENTEDMAKE" } })
        .jpeg()
        .toBuffer();
      const { sha256 } = await stored(dataDir, big);
      const page = await pagePicture(dataDir, sha256);
      const { format, width, height, exif, icc } = await sharp(page!).metadata();
      expect({ format, width, height, exif, icc }).toEqual({ format: "webp", width: 900, height: 450 });
      expect(await pagePicture(dataDir, "0".repeat(64))).toBeNull();
      expect(await pagePicture(dataDir, "../../etc/passwd")).toBeNull();
      await writeFile(viewPath(dataDir, sha256, "small")!, "no picture");
      expect(await pagePicture(dataDir, sha256)).toBeNull();
    }));

  test("are never larger than the original", () =>
    view(fixture("plate.heic"), (seen) => expect([seen.width, seen.height]).toEqual([320, 200]), "thumb"));

  test("view and small keep colour at full resolution", () =>
    withStore(async (dataDir) => {
      const { sha256 } = await stored(dataDir, await image(plate()).png().toBuffer());
      for (const [size, format] of [
        ["view", "jpeg"],
        ["small", "jpeg"],
        ["thumb", "webp"],
      ] as const) {
        const header = await sharp(viewPath(dataDir, sha256, size)!).metadata();
        expect(header.format).toBe(format);
        if (format === "jpeg") expect(header.chromaSubsampling).toBe("4:4:4");
      }
    }));
});

describe("place, time, camera and owner", () => {
  const xmp =
    '<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"/></x:xmpmeta>';
  const traces = ["Exif", "GPS", "ICC_PROFILE", "xmpmeta", "Photoshop", "INVENTEDMAKE", "INVENTEDOWNER"];

  async function tagged(format: "jpeg" | "png" | "webp" | "tiff"): Promise<Buffer> {
    return image(noise(640, 480))
      .withExif({
        IFD0: { Make: "INVENTEDMAKE", Artist: "INVENTEDOWNER" },
        IFD3: {
          GPSLatitudeRef: "N",
          GPSLatitude: "51/1 30/1 0/1",
          GPSLongitudeRef: "E",
          GPSLongitude: "7/1 15/1 0/1",
        },
      })
      .withXmp(xmp)
      .withIccProfile("p3")
      .toFormat(format)
      .toBuffer();
  }

  test.each(["jpeg", "png", "webp", "tiff"] as const)("of a %s are in no derived file", async (format) => {
    const original = await tagged(format);
    // Without this the test could pass on a picture that never had any.
    expect(original.includes(format === "tiff" ? "xmpmeta" : "INVENTEDOWNER")).toBe(true); // TIFF: XMP alone
    if (format === "jpeg") expect((await exifr.gps(original)).latitude).toBeCloseTo(51.5, 6);
    await withStore(async (dataDir) => {
      const { sha256 } = await stored(dataDir, original);
      for (const size of Object.keys(photoSizes) as PhotoSize[]) {
        const bytes = await readFile(viewPath(dataDir, sha256, size)!);
        const { exif, icc, iptc, xmp: found } = await sharp(bytes).metadata();
        expect([exif, icc, iptc, found]).toEqual([undefined, undefined, undefined, undefined]);
        expect(traces.filter((trace) => bytes.includes(trace))).toEqual([]);
        if (size !== "thumb") {
          // The reader of another project finds nothing either; it does not read WebP.
          expect(
            await exifr.parse(bytes, { tiff: true, gps: true, xmp: true, icc: true, iptc: true }),
          ).toBeUndefined();
        }
      }
    });
  });
});
