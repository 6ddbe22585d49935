import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { readFile, rm } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath } from "node:url";
import sharp from "sharp";
import { expect, it } from "vitest";
import { remakeViews } from "@/lib/photo";
import { stored, withStore } from "./store";

const picture = readFileSync(
  fileURLToPath(new URL("../../../demo-images/set/lap-cold-lap.jpg", import.meta.url)),
);
const digest = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

/** The view as sharp writes it by itself: with Huffman tables fitted to the picture, as every photo had it at first. */
const fitted = (): Promise<Buffer> =>
  sharp(picture)
    .autoOrient()
    .flatten({ background: "#ffffff" })
    .toColourspace("srgb")
    .raw({ depth: "uchar" })
    .toBuffer({ resolveWithObject: true })
    .then(({ data, info }) =>
      sharp(data, { raw: { width: info.width, height: info.height, channels: 3 } })
        .jpeg({ quality: 88, chromaSubsampling: "4:4:4" })
        .toBuffer(),
    );

it("makes pictures anew byte for byte, those sealed before Huffman tables were left as they come as well", () =>
  withStore(async (dataDir) => {
    const { sha256 } = await stored(dataDir, picture);
    const folder = path.join(dataDir, "photos/views", sha256);
    const view = path.join(folder, "view.jpg");
    const now = await readFile(view);
    const before = await fitted();
    expect(digest(before)).not.toBe(digest(now));
    // The same pixels either way: only how they are written down differs.
    const pixels = (bytes: Buffer): Promise<Buffer> => sharp(bytes).raw().toBuffer();
    expect((await pixels(before)).equals(await pixels(now))).toBe(true);

    for (const sealed of [now, before]) {
      await rm(folder, { recursive: true });
      expect(await remakeViews(dataDir, sha256, { view: digest(sealed) })).toBe("made");
      expect((await readFile(view)).equals(sealed)).toBe(true);
    }
    await rm(folder, { recursive: true });
    expect(await remakeViews(dataDir, sha256, { view: digest(Buffer.from("another picture")) })).toBe(
      "other",
    );
    await expect(readFile(view)).rejects.toThrow("ENOENT");
  }));
