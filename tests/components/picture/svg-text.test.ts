import sharp from "sharp";
import { describe, expect, it } from "vitest";
import { svgText } from "@/components/picture";
import { emptyDrawing, scene, type Mark } from "@/lib/marks";

const pore: Mark = {
  id: "m1",
  imperfection: "surface-porosity",
  shape: { kind: "point", at: { x: 200, y: 100 }, radius: 40 },
  place: "face",
  stretch: "run",
  patterns: ["single"],
  depthMm: null,
  note: "",
} as unknown as Mark;

describe("the marks as a file that leaves the page", () => {
  it("is an SVG of the size asked for, with the mark where it lies on the photo and words that cannot break it", async () => {
    const shapes = scene(
      { ...emptyDrawing, marks: [pore] },
      { labels: () => `<5 & "6" mm`, scaleLabel: "", widthPx: 400 },
    );
    const text = svgText(shapes, { widthPx: 400, heightPx: 200 }, 400, { width: 200, height: 100 });
    expect(text).toContain("&lt;5 &amp; &quot;6&quot; mm");
    const { data, info } = await sharp(Buffer.from(text))
      .ensureAlpha()
      .raw()
      .toBuffer({ resolveWithObject: true });
    expect([info.width, info.height]).toEqual([200, 100]);
    const alpha = (x: number, y: number) => data[(y * info.width + x) * 4 + 3] ?? 0;
    // On the circle there is ink, in its middle and far from it none.
    expect(Math.max(...[118, 119, 120, 121, 122].map((x) => alpha(x, 50)))).toBeGreaterThan(200);
    expect([alpha(100, 50), alpha(5, 95)]).toEqual([0, 0]);
  });
});
