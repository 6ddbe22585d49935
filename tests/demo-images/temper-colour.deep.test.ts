import { describe, expect, it } from "vitest";
import { renderScene, type Pixel, type RenderedScene } from "@/demo-images";
import { pixelsInside } from "./picture";

/** Blue over red, about 1 on bare steel: straw and gold lower it. */
function blueness({ rgb, width }: RenderedScene, pixels: readonly Pixel[]): number {
  let red = 0;
  let blue = 0;
  for (const [x, y] of pixels) {
    const k = 3 * (Math.floor(y) * width + Math.floor(x));
    red += rgb[k]!;
    blue += rgb[k + 2]!;
  }
  return blue / red;
}

describe("the temper colour's outline is where the colour ends in the picture", () => {
  it("straw lies just inside it, bare steel outside", () => {
    const picture = renderScene({
      scenario: "stainless-temper-colour",
      seed: 7,
      megapixels: 0.3,
      quality: "exact-draft",
      scaleObject: "none",
    });
    const { truth, width, height } = picture;
    const band = truth.imperfections.find(({ kind }) => kind === "temper-colour")!;
    const [cx, cy] = [0, 1].map(
      (i) => band.outlinePx.reduce((sum, p) => sum + p[i as 0 | 1], 0) / band.outlinePx.length,
    );
    /* The outline moved towards or away from the middle of the weld, across it alone. */
    const moved = (px: number): Pixel[] =>
      band.outlinePx.map(([x, y]) => [x, y + Math.sign(y - cy!) * px] as const);
    const inFrame = ([x, y]: Pixel): boolean =>
      x > 0 && y > 0 && x < width && y < height && Math.abs(x - cx!) < width / 4;
    const between = (inner: number, outer: number): Pixel[] => {
      const within = new Set(pixelsInside(moved(inner)).map((p) => p.join()));
      return pixelsInside(moved(outer)).filter((p) => !within.has(p.join()) && inFrame(p));
    };
    const pxPerMm = width / 121;
    const bare = blueness(picture, between(2 * pxPerMm, 5 * pxPerMm));
    const rim = blueness(picture, between(-0.5 * pxPerMm, 0.5 * pxPerMm));
    const straw = blueness(picture, between(-4 * pxPerMm, -2 * pxPerMm));
    expect(straw).toBeLessThan(0.8 * bare);
    expect(rim).toBeGreaterThan(straw + 0.5 * (bare - straw));
    expect(rim).toBeLessThan(bare);
    expect(band.sizes.mostReachMm!).toBeGreaterThan(band.sizes.reachMm!);
  });
});
