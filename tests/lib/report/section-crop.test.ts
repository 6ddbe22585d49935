import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sectionCrop } from "@/lib/report/section-crop";
import { emptyFillet } from "../assess/section-bead";

const photo = { widthPx: 2000, heightPx: 1500 };
const arbInside = fc.record({
  x: fc.integer({ min: 1, max: photo.widthPx - 1 }),
  y: fc.integer({ min: 1, max: photo.heightPx - 1 }),
});

describe("sectionCrop", () => {
  it("is none without an outline", () => {
    expect(sectionCrop(emptyFillet, photo)).toBeNull();
  });

  it("holds every point of the outline and stays inside the photo", () => {
    fc.assert(
      fc.property(fc.array(arbInside, { minLength: 3, maxLength: 12 }), (outline) => {
        const crop = sectionCrop({ ...emptyFillet, outline }, photo);
        fc.pre(crop !== null);
        expect(crop.x).toBeGreaterThanOrEqual(0);
        expect(crop.y).toBeGreaterThanOrEqual(0);
        expect(crop.x + crop.width).toBeLessThanOrEqual(photo.widthPx + 1e-9);
        expect(crop.y + crop.height).toBeLessThanOrEqual(photo.heightPx + 1e-9);
        for (const { x, y } of outline) {
          expect(x >= crop.x && x <= crop.x + crop.width + 1e-9).toBe(true);
          expect(y >= crop.y && y <= crop.y + crop.height + 1e-9).toBe(true);
        }
      }),
      { seed: 20261128 },
    );
  });
});
