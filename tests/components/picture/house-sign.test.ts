import sharp from "sharp";
import { describe, expect, it } from "vitest";
import { houseSign } from "@/components/picture";

const ofPixel = async (px: number, masked: boolean, x: number, y: number) => {
  const { data, info } = await sharp(Buffer.from(houseSign(px, masked)))
    .raw()
    .toBuffer({ resolveWithObject: true });
  const at = (Math.round(y * info.height) * info.width + Math.round(x * info.width)) * info.channels;
  return [info.width, info.height, ...data.subarray(at, at + 3)];
};

describe("the house's sign", () => {
  it("is a picture of its size with the temper colours along its foot", async () => {
    expect(await ofPixel(192, false, 0.1, 0.95)).toEqual([192, 192, 0xe8, 0xb8, 0x3a]);
    expect(await ofPixel(512, false, 0.9, 0.95)).toEqual([512, 512, 0x1f, 0x5a, 0xa6]);
  });

  it("has nothing but ground where a device may cut it to a circle", async () => {
    for (const [x, y] of [
      [0.02, 0.02],
      [0.97, 0.5],
      [0.5, 0.97],
      [0.03, 0.95],
    ] as const)
      expect(await ofPixel(512, true, x, y)).toEqual([512, 512, 0x14, 0x17, 0x1c]);
  });
});
