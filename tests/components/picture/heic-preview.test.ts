import { readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { isHeic, thumbnailsFreed } from "@/components/picture/heic-boxes";
import { heicPreview } from "@/components/picture/heic-preview";
import { inDepth } from "../../setup/in-depth";
import { heicWithThumbnail } from "../../fixtures/photos/heic-with-thumbnail";

const fixture = (name: string): Buffer =>
  readFileSync(path.join(fileURLToPath(new URL("../../fixtures/photos", import.meta.url)), name));

/** The first four bytes say what kind of light it is: a corner of the plate, of which the server's own test has the colours. */
const corner = (data: Uint8ClampedArray) => [...data.subarray(0, 3)];

describe("a small picture out of a HEIC file", () => {
  test("is its thumbnail, though the photo beside it is far larger", async () => {
    const preview = await heicPreview(heicWithThumbnail());
    expect([preview?.width, preview?.height]).toEqual([320, 200]);
    const plate = await heicPreview(fixture("plate.heic"));
    for (const [i, value] of corner(preview!.data).entries())
      expect(Math.abs(value - corner(plate!.data)[i]!)).toBeLessThan(12);
  });

  test("is none where the photo is large and carries none", async () => {
    const file = fixture("plate.heic");
    const size = file.indexOf("ispe", 0, "latin1");
    file.writeUInt32BE(4000, size + 8);
    file.writeUInt32BE(3000, size + 12);
    expect(await heicPreview(file)).toBeNull();
  });

  test("turns as the file says", async () => {
    const preview = await heicPreview(fixture("plate-turned.heic"));
    expect([preview?.width, preview?.height]).toEqual([320, 200]);
  });

  test("a damaged file has none, and ends", async () => {
    const cut = fixture("plate.heic").subarray(0, 900);
    await expect(heicPreview(cut)).rejects.toThrow();
  });
});

describe("boxes of a file", () => {
  test("tell a HEIC by its first bytes", () => {
    expect(isHeic(fixture("plate.heic"))).toBe(true);
    expect(isHeic(Buffer.from("\xff\xd8\xff\xe0 some jpeg file", "latin1"))).toBe(false);
    expect(isHeic(Buffer.from("\0\0\0\x18ftypisom\0\0\0\0", "latin1"))).toBe(false);
    expect(isHeic(new Uint8Array(3))).toBe(false);
  });

  test("nothing but the four letters of a thumbnail's reference is written over, and not in the file itself", () => {
    const file = heicWithThumbnail();
    const before = Buffer.from(file);
    const freed = thumbnailsFreed(file)!;
    expect(Buffer.compare(file, before)).toBe(0);
    const other = [...freed.keys()].filter((k) => freed[k] !== file[k]);
    expect(Buffer.from(other.map((k) => file[k]!)).toString("latin1")).toBe("thmb");
    expect(thumbnailsFreed(fixture("plate.heic"))).toBeNull();
  });

  test("bytes that lie about themselves end in nothing or in a file of the same length", () => {
    const file = heicWithThumbnail().subarray(0, 1100);
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(1099), fc.nat(255)), { maxLength: 40 }),
        fc.nat(1099),
        (changes, cut) => {
          const bytes = Uint8Array.from(file);
          for (const [at, value] of changes) bytes[at] = value;
          for (const part of [bytes, bytes.subarray(0, cut)])
            expect([undefined, part.length]).toContain(thumbnailsFreed(part)?.length);
        },
      ),
      { seed: 12, numRuns: inDepth(100, 2000) },
    );
  });
});
