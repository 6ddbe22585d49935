import { describe, expect, it } from "vitest";
import sharp from "sharp";
import { encodePicture, renderScene, renderSceneOnThreads, renderTruth, scenarioNames } from "@/demo-images";
import { imperfectionIds } from "@/lib/trade";
import { inDepth } from "../setup/in-depth";

const small = { megapixels: 0.1, quality: "exact-draft" } as const;

describe("the same seed", () => {
  it("gives the same bytes and the same truth, and another seed gives others", async () => {
    const params = { scenario: "stringer-ropey", megapixels: 0.12, seed: 11 } as const;
    const [a, b, c] = [renderScene(params), renderScene(params), renderScene({ ...params, seed: 12 })];
    const encoding = { quality: 84, orientation: 1 } as const;
    const [fileA, fileB] = await Promise.all([encodePicture(a, encoding), encodePicture(b, encoding)]);
    expect(fileA.equals(fileB)).toBe(true);
    expect(JSON.stringify(a.truth)).toBe(JSON.stringify(b.truth));
    expect(Buffer.compare(Buffer.from(a.rgb), Buffer.from(c.rgb))).not.toBe(0);
  });

  it.each([1, 3])("gives the same bytes on %d worker threads as on none", async (threads) => {
    const params = { scenario: "lap-cold-lap", megapixels: 0.12, seed: 5 } as const;
    const alone = renderScene(params);
    const shared = await renderSceneOnThreads(params, threads);
    expect(Buffer.compare(Buffer.from(alone.rgb), Buffer.from(shared.rgb))).toBe(0);
    expect(JSON.stringify(alone.truth)).toBe(JSON.stringify(shared.truth));
  });
});

describe("the scenarios together", () => {
  // Set-ups and shapes only: the coarsest picture carries them all.
  const truths = scenarioNames.map((scenario) => renderTruth({ ...small, scenario, seed: 7 }));

  it("have the truth of their pictures", () => {
    for (const scenario of inDepth(["tee-porosity-soot", "hard-cracks"] as const, scenarioNames))
      expect(renderScene({ ...small, scenario, seed: 7 }).truth).toEqual(
        truths[scenarioNames.indexOf(scenario)],
      );
  });

  it("show every kind of the vocabulary", () => {
    const shown = new Set(truths.flatMap((truth) => truth.imperfections.map((mark) => mark.kind)));
    expect(imperfectionIds.filter((id) => !shown.has(id))).toEqual([]);
  });

  it("each have a scale object in the scene and toes on both sides of the axis", () => {
    for (const truth of truths) {
      expect(truth.scaleObject, truth.scenario).not.toBeNull();
      expect(truth.weld.leftToePx.length, truth.scenario).toBe(truth.weld.sections.length);
      expect(
        truth.weld.sections.every((section) => section.widthMm > 0),
        truth.scenario,
      ).toBe(true);
    }
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
