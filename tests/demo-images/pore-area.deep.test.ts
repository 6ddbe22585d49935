import { describe, expect, it } from "vitest";
import { renderScene } from "@/demo-images";
import { darkRegion, greyAt, pixelsInside, polygonArea } from "./picture";

/* Everything here is found in the pixels; the truth file is only what the finding is compared with. */

describe("a rendered pore covers the area its truth states", () => {
  it("counts the dark pixels that hang together with the middle of each larger pore", () => {
    const picture = renderScene({
      scenario: "tee-porosity-soot",
      megapixels: 1,
      quality: "exact-draft",
      seed: 7,
      fieldWidthMm: 96,
      lighting: "overhead",
    });
    const pores = picture.truth.imperfections.filter(
      (mark) => mark.kind === "surface-porosity" && mark.sizes.diameterMm! > 1,
    );
    expect(pores.length).toBeGreaterThan(4);
    const ratios = pores.map((pore) => {
      const [cx, cy] = [0, 1].map(
        (i) => pore.outlinePx.reduce((sum, p) => sum + p[i as 0 | 1], 0) / pore.outlinePx.length,
      );
      const wide = pore.outlinePx.map(([x, y]) => [cx! + (x - cx!) * 1.5, cy! + (y - cy!) * 1.5] as const);
      const levels = pixelsInside(wide).map(([x, y]) => greyAt(picture, x, y));
      const floor = greyAt(picture, cx!, cy!);
      const face = levels.toSorted((a, b) => a - b)[Math.floor(levels.length * 0.8)]!;
      expect(face - floor).toBeGreaterThan(25);
      return darkRegion(picture, [cx!, cy!], (floor + face) / 2, wide) / polygonArea(pore.outlinePx);
    });
    const median = ratios.toSorted((a, b) => a - b)[ratios.length >> 1]!;
    // Half-way between floor and face falls a little inside or outside the rim with the light: a fifth of the area.
    expect(median).toBeGreaterThan(0.8);
    expect(median).toBeLessThan(1.2);
  });
});
