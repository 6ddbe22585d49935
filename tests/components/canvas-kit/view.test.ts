import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  fitView,
  keepInSight,
  MOST_ZOOM,
  pickPoint,
  reveal,
  toPhoto,
  toScreen,
  zoomAt,
} from "@/components/canvas-kit/view";

const photo = { width: 4032, height: 3024 };
const box = { width: 374, height: 560 };
const arbPoint = fc.record({ x: fc.integer({ min: 0, max: 4000 }), y: fc.integer({ min: 0, max: 3000 }) });
const arbView = fc.record({
  zoom: fc.integer({ min: 5, max: 1200 }).map((n) => n / 100),
  pan: fc.record({ x: fc.integer({ min: -4000, max: 900 }), y: fc.integer({ min: -4000, max: 900 }) }),
});

describe("view", () => {
  test("a fitted photo lies wholly inside the box, in its middle", () => {
    const view = fitView(photo, box);
    const corner = toScreen(view, { x: photo.width, y: photo.height });
    expect(view.pan.x).toBeCloseTo(10, 9);
    expect(corner.x).toBeCloseTo(box.width - 10, 9);
    expect(view.pan.y).toBeCloseTo(box.height - corner.y, 9);
  });

  test("screen and photo are each other's inverse", () => {
    fc.assert(
      fc.property(arbView, arbPoint, (view, p) => {
        const back = toPhoto(view, toScreen(view, p));
        expect(Math.hypot(back.x - p.x, back.y - p.y)).toBeLessThan(1e-6); // doubles of a few thousand
      }),
    );
  });

  test("the photo point under the pointer stays under it while zooming, also at the limits", () => {
    fc.assert(
      fc.property(arbView, arbPoint, fc.constantFrom(0.01, 0.5, 1.25, 3, 500), (view, screen, factor) => {
        const zoomed = zoomAt(view, screen, factor, 0.03);
        expect(zoomed.zoom).toBeGreaterThanOrEqual(0.03);
        expect(zoomed.zoom).toBeLessThanOrEqual(MOST_ZOOM);
        const under = toScreen(zoomed, toPhoto(view, screen));
        expect(Math.hypot(under.x - screen.x, under.y - screen.y)).toBeLessThan(1e-6);
      }),
    );
  });

  test("the photo cannot be pushed out of sight: the middle of the box stays on it", () => {
    fc.assert(
      fc.property(arbView, (view) => {
        const held = keepInSight(view, photo, box);
        const middle = toPhoto(held, { x: box.width / 2, y: box.height / 2 });
        expect(middle.x).toBeGreaterThanOrEqual(-1e-6);
        expect(middle.x).toBeLessThanOrEqual(photo.width + 1e-6);
        expect(middle.y).toBeGreaterThanOrEqual(-1e-6);
        expect(middle.y).toBeLessThanOrEqual(photo.height + 1e-6);
      }),
    );
  });

  test("revealing a point moves the photo only when it has to", () => {
    const view = { zoom: 2, pan: { x: 0, y: 0 } };
    expect(reveal(view, { x: 90, y: 200 }, box, 40)).toBe(view);
    expect(reveal(view, { x: 300, y: 200 }, box, 40).pan).toEqual({ x: 374 - 40 - 600, y: 0 });
  });

  test("a picked point is stored in hundredths of a photo pixel, with what one CSS pixel covered", () => {
    expect(pickPoint({ zoom: 0.3, pan: { x: 7, y: 9 } }, { x: 107, y: 9 })).toEqual({
      x: 333.33,
      y: 0,
      grainPx: 3.33,
    });
  });
});
