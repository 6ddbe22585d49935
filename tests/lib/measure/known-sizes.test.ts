import { describe, expect, it } from "vitest";
import { calibrate, defaultMeasureOptions } from "@/lib/measure";
import { knownSizes } from "@/lib/measure/known-sizes";

const of = (id: string) => knownSizes.find((one) => one.id === id)!;

describe("things of known size", () => {
  it("ids are unique, names too, and every one names its source", () => {
    expect(new Set(knownSizes.map(({ id }) => id)).size).toBe(knownSizes.length);
    expect(new Set(knownSizes.map(({ name }) => name)).size).toBe(knownSizes.length);
    for (const { source } of knownSizes) expect(source.document.length).toBeGreaterThan(3);
  });

  /** US Mint, coin specifications: diameter and thickness, mm. */
  it.each([
    ["us-1c", 19.05, 1.52],
    ["us-5c", 21.21, 1.95],
    ["us-10c", 17.91, 1.35],
    ["us-25c", 24.26, 1.75],
    ["us-50c", 30.61, 2.15],
    ["us-1d", 26.49, 2.0],
  ])("%s is %s mm across and %s mm thick", (id, diameterMm, thicknessMm) => {
    expect(of(id)).toMatchObject({ kind: "disc", diameterMm, thicknessMm });
  });

  /** ISO/IEC 7810, size ID-1, from memory: 3.370 by 2.125 in. */
  it("the card is 3.370 by 2.125 inches to a hundredth of a millimetre", () => {
    const found = of("id-1-card");
    if (found.kind !== "rectangle") throw new Error("no rectangle");
    expect(found.widthMm).toBeCloseTo(3.37 * 25.4, 2);
    expect(Math.abs(found.heightMm - 2.125 * 25.4)).toBeLessThan(0.01);
  });

  /** ISO 216: an A0 sheet is one square metre with sides as 1 to the root of 2, halved four times and rounded down to mm. From memory. */
  it("A4 follows from a square metre halved four times", () => {
    const found = of("a4");
    if (found.kind !== "rectangle") throw new Error("no rectangle");
    expect(found.widthMm).toBe(Math.floor(1000 / 2 ** (9 / 4)));
    expect(found.heightMm).toBe(Math.floor(1000 / 2 ** (7 / 4)));
  });

  it("every one can be set as a scale", () => {
    for (const one of knownSizes) {
      const scale =
        one.kind === "disc"
          ? {
              kind: "disc" as const,
              diameterMm: one.diameterMm,
              rim: [0, 1, 2, 3, 4, 5].map((t) => ({
                x: 500 + 200 * Math.cos(t),
                y: 500 + 200 * Math.sin(t),
              })),
            }
          : {
              kind: "edges" as const,
              widthMm: one.widthMm,
              heightMm: one.heightMm,
              edges: (
                [
                  [0.1, 0, 0.9, 0],
                  [1, 0.1, 1, 0.9],
                  [0.9, 1, 0.1, 1],
                  [0, 0.9, 0, 0.1],
                ] as const
              ).map(([ax, ay, bx, by]): [{ x: number; y: number }, { x: number; y: number }] => [
                { x: 8 * ax * one.widthMm, y: 8 * ay * one.heightMm },
                { x: 8 * bx * one.widthMm, y: 8 * by * one.heightMm },
              ]),
            };
      const result = calibrate(scale, defaultMeasureOptions);
      expect(result.ok && result.value.mmPerPx).toBeGreaterThan(0.01);
    }
  });
});
