import { describe, expect, it } from "vitest";
import { laySquare, SQUARE } from "@/lib/trace/square";

/** Red is the place along x and green the place along y, each as a share of the picture. */
function ramp(width: number, height: number) {
  const data = new Uint8ClampedArray(4 * width * height).fill(255);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      data[4 * (y * width + x)] = (255 * (x + 0.5)) / width;
      data[4 * (y * width + x) + 1] = (255 * (y + 0.5)) / height;
    }
  return { width, height, data };
}

describe("a photo laid into the finder's square", () => {
  it.each([
    [1024, 768],
    [600, 1000],
    [256, 256],
    [200, 90],
  ])("keeps its places and leaves what lies beside it grey (%i x %i)", (width, height) => {
    const { planes, pxPerCell } = laySquare(ramp(width, height));
    const { side, answer } = SQUARE;
    const px = Math.max(width, height) / side;
    expect(pxPerCell).toBeCloseTo((px * side) / answer, 9);
    for (const [i, j] of [
      [3, 5],
      [60, 40],
      [Math.floor(width / px) - 2, Math.floor(height / px) - 2],
    ] as const) {
      expect(Math.abs(planes[j * side + i]! - ((i + 0.5) * px) / width)).toBeLessThan(0.012);
      expect(Math.abs(planes[side * side + j * side + i]! - ((j + 0.5) * px) / height)).toBeLessThan(0.012);
    }
    if (width !== height) expect(planes[side * side - 1]).toBe(0.5);
  });
});
