import { describe, expect, it } from "vitest";
import sharp from "sharp";
import { encodePicture, renderScene, renderSceneOnThreads } from "@/demo-images";
import { inDepth, itDeep } from "../setup/in-depth";

/** The deep run with lens, noise and sharpening as well. */
const drawn = { megapixels: 0.1, quality: inDepth("exact-draft", "photo") } as const;
const small = { megapixels: 0.1, quality: "exact-draft" } as const;

describe("the same seed", () => {
  it("gives the same bytes and the same truth, and another seed gives others", async () => {
    const params = { ...drawn, scenario: "stringer-ropey", seed: 11 } as const;
    const [a, b, c] = [renderScene(params), renderScene(params), renderScene({ ...params, seed: 12 })];
    const encoding = { quality: 84, orientation: 1 } as const;
    const [fileA, fileB] = await Promise.all([encodePicture(a, encoding), encodePicture(b, encoding)]);
    expect(fileA.equals(fileB)).toBe(true);
    expect(JSON.stringify(a.truth)).toBe(JSON.stringify(b.truth));
    expect(Buffer.compare(Buffer.from(a.rgb), Buffer.from(c.rgb))).not.toBe(0);
  });

  itDeep.each([1, 3])("gives the same bytes on %d worker threads as on none", async (threads) => {
    const params = { ...drawn, scenario: "lap-cold-lap", seed: 5 } as const;
    const alone = renderScene(params);
    const shared = await renderSceneOnThreads(params, threads);
    expect(Buffer.compare(Buffer.from(alone.rgb), Buffer.from(shared.rgb))).toBe(0);
    expect(JSON.stringify(alone.truth)).toBe(JSON.stringify(shared.truth));
  });
});

describe("a stored orientation", () => {
  it("is undone by a reader that obeys it", async () => {
    const picture = renderScene({ ...small, scenario: "vertical-up-uneven", seed: 2 });
    for (const orientation of [3, 6, 8] as const) {
      const bytes = await encodePicture(picture, { quality: 95, orientation });
      expect((await sharp(bytes).metadata()).orientation).toBe(orientation);
      const { data, info } = await sharp(bytes).autoOrient().raw().toBuffer({ resolveWithObject: true });
      expect([info.width, info.height]).toEqual([picture.width, picture.height]);
      let off = 0;
      for (let k = 0; k < data.length; k++) off += Math.abs(data[k]! - picture.rgb[k]!);
      expect(off / data.length).toBeLessThan(6);
    }
  });
});
