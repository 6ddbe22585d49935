import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { placePicker, shiftIntoFree, type ScreenBox } from "@/components/canvas/picker-place";

const screen = fc.record({
  width: fc.integer({ min: 320, max: 2600 }),
  height: fc.integer({ min: 320, max: 1600 }),
});
const spotOn = ({ width, height }: { width: number; height: number }): fc.Arbitrary<ScreenBox> =>
  fc
    .tuple(
      fc.integer({ min: 0, max: width }),
      fc.integer({ min: 0, max: width }),
      fc.integer({ min: 0, max: height }),
      fc.integer({ min: 0, max: height }),
    )
    .map(([a, b, c, d]) => ({
      left: Math.min(a, b),
      right: Math.max(a, b),
      top: Math.min(c, d),
      bottom: Math.max(c, d),
    }));
const cases = screen.chain((size) => fc.tuple(fc.constant(size), spotOn(size)));

describe("where the picker lies", () => {
  it("law: a panel at the side never covers the spot, and lies on the screen wide enough to be read", () => {
    fc.assert(
      fc.property(cases, ([size, spot]) => {
        const place = placePicker(spot, size);
        if (place.kind === "below") return;
        expect(place.left).toBeGreaterThanOrEqual(0);
        expect(place.left + place.width).toBeLessThanOrEqual(size.width);
        expect(place.width).toBeGreaterThanOrEqual(340);
        expect(place.left >= spot.right + 20 || place.left + place.width <= spot.left - 20).toBe(true);
      }),
      { seed: 20, numRuns: 2000 },
    );
  });

  it("law: with room on either side of a desk's screen it never comes from below", () => {
    fc.assert(
      fc.property(cases, ([size, spot]) => {
        const roomy = Math.max(size.width - spot.right, spot.left) >= 380;
        if (size.width >= 760 && roomy) expect(placePicker(spot, size).kind).toBe("side");
      }),
      { seed: 21, numRuns: 2000 },
    );
  });

  it("is a sheet from below on a phone held upright, and beside the spot on one held across", () => {
    const spot = { left: 100, right: 120, top: 400, bottom: 420 };
    expect(placePicker(spot, { width: 390, height: 844 })).toEqual({ kind: "below", top: 354 });
    expect(placePicker(spot, { width: 844, height: 390 }).kind).toBe("side");
    expect(placePicker(null, { width: 1440, height: 900 })).toEqual({ kind: "side", left: 952, width: 480 });
  });

  it("law: where the photo leaves room for a panel at its right, none of the photo is covered", () => {
    fc.assert(
      fc.property(cases, fc.integer({ min: 0, max: 2600 }), ([size, spot], edge) => {
        const photo = { right: Math.max(edge, spot.right) };
        const place = placePicker(spot, size, photo);
        if (place.kind === "side" && size.width - photo.right >= 380)
          expect(place.left).toBeGreaterThanOrEqual(photo.right);
      }),
      { seed: 23, numRuns: 2000 },
    );
  });

  it("law: moved by what is said, a spot smaller than what is free lies in it; a free one stays", () => {
    const free = { top: 60, bottom: 350 };
    const small = fc
      .tuple(fc.integer({ min: -200, max: 1000 }), fc.integer({ min: 0, max: 270 }))
      .map(([top, height]) => ({ left: 0, right: 10, top, bottom: top + height }));
    fc.assert(
      fc.property(small, (spot) => {
        const by = shiftIntoFree(spot, free);
        expect(spot.top + by).toBeGreaterThanOrEqual(free.top);
        expect(spot.bottom + by).toBeLessThanOrEqual(free.bottom);
        expect(shiftIntoFree({ ...spot, top: spot.top + by, bottom: spot.bottom + by }, free)).toBe(0);
      }),
      { seed: 22, numRuns: 1000 },
    );
  });
});
