import { describe, expect, it } from "vitest";
import { fitSurface } from "@/lib/trials";

// As the book prints it.
const r = 1.414;
/**
 * The chemical process of Montgomery, Design and Analysis of Experiments, chapter 11 (yield over time and temperature,
 * coded): a central composite with five runs in the middle. Data and printed results restated from memory; the one gives
 * the other.
 */
const design = [
  [-1, -1, 76.5],
  [-1, 1, 77.0],
  [1, -1, 78.0],
  [1, 1, 79.5],
  [0, 0, 79.9],
  [0, 0, 80.3],
  [0, 0, 80.0],
  [0, 0, 79.7],
  [0, 0, 79.8],
  [r, 0, 78.4],
  [-r, 0, 75.6],
  [0, r, 78.5],
  [0, -r, 77.0],
] as const;
const points = design.map(([x, y]) => [x, y]);
const yields = design.map(([, , y]) => y);

describe("a second-order surface", () => {
  const surface = fitSurface(points, yields, 2)!;

  it("has the book's coefficients: 79.94 + 0.995 x + 0.515 y + 0.25 xy - 1.376 x² - 1.001 y²", () => {
    [79.94, 0.995, 0.515, 0.25, -1.376, -1.001].forEach((value, i) =>
      expect(surface.coefficients[i]).toBeCloseTo(value, 3),
    );
    expect(surface.s).toBeCloseTo(0.2662, 3);
  });

  it("has the book's stationary point: (0.389, 0.306), 80.21, a maximum with -0.9634 and -1.4143", () => {
    const { at, value, kind, eigenvalues, inside } = surface.stationary!;
    expect(at[0]).toBeCloseTo(0.389, 3);
    expect(at[1]).toBeCloseTo(0.306, 3);
    expect(value).toBeCloseTo(80.212, 2);
    expect(kind).toBe("most");
    expect(eigenvalues[0]).toBeCloseTo(-1.4141, 3);
    expect(eigenvalues[1]).toBeCloseTo(-0.9634, 3);
    expect(inside).toBe(true);
  });

  it("has the book's lack of fit: F = 1.79 on 3 and 4 degrees, which does not speak against it", () => {
    const { f, degrees, p } = surface.lackOfFit!;
    expect(degrees).toEqual([3, 4]);
    expect(f).toBeCloseTo(1.78, 1);
    expect(p).toBeGreaterThan(0.28);
    expect(p).toBeLessThan(0.3);
  });

  it("misses what a first-order surface misses, and says so", () => {
    const flat = fitSurface(points, yields, 1)!;
    expect(flat.lackOfFit!.p).toBeLessThan(0.001);
    expect(flat.stationary).toBeNull();
  });

  it("has a prediction interval of the mean's and one more run (closed form for a plain mean)", () => {
    const flat = fitSurface([[-1], [1], [-1], [1]], [1, 2, 2, 1], 1)!;
    const { value, low, high } = flat.predict([0]);
    // Slope 0: s² = 1/2, at the middle the variance is s²(1 + 1/4); t of 2 degrees at 97.5 % is 4.303.
    expect(value).toBeCloseTo(1.5, 12);
    expect(high! - value).toBeCloseTo(4.303 * Math.sqrt(0.5 * 1.25), 3);
    expect(value - low!).toBeCloseTo(high! - value, 12);
  });

  it("has no interval without a bead to spare, and is none where points are too few", () => {
    expect(fitSurface([[-1], [0], [1]], [1, 2, 1], 2)!.predict([0]).low).toBeNull();
    expect(fitSurface([[-1], [1]], [1, 2], 2)).toBeNull();
  });

  it("tells least, most and saddle apart", () => {
    const grid = [-1, 0, 1].flatMap((a) => [-1, 0, 1].map((b) => [a, b]));
    const of = (f: (a: number, b: number) => number) =>
      fitSurface(
        grid,
        grid.map(([a, b]) => f(a!, b!)),
        2,
      )!.stationary;
    expect(of((a, b) => a * a + b * b - a)).toMatchObject({ kind: "least", inside: true });
    expect(of((a, b) => a * a - b * b)).toMatchObject({ kind: "saddle" });
    expect(of((a, b) => (a - 3) ** 2 + b * b)).toMatchObject({ kind: "least", inside: false });
    expect(of((a) => a * a)).toBeNull();
  });
});
