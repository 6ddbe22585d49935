import { describe, expect, it } from "vitest";
import { measureSection, type SectionFigureId, type SectionMeasures } from "@/lib/section";
import { arc, calibration, filletDrawing, px, type Pair } from "./known-shapes";

const value = ({ figures }: SectionMeasures, id: SectionFigureId): number => figures[id]?.value ?? NaN;
const measured = (outline: readonly Pair[], root: Pair | null, angleDeg = 90): SectionMeasures =>
  measureSection(filletDrawing(outline, root, angleDeg), calibration);

/** A z by z triangle laid into the corner: a = z / sqrt(2), A = z^2 / 2 (definition of the theoretical throat, AWS A3.0). */
describe("a mitre fillet of equal legs", () => {
  const z = 8;
  const one = measured(
    [
      [0, 0],
      [z, 0],
      [0, z],
    ],
    [0, 0],
  );

  it("has throat z / sqrt(2) and area z^2 / 2", () => {
    expect(value(one, "leg-1")).toBeCloseTo(z, 9);
    expect(value(one, "leg-2")).toBeCloseTo(z, 9);
    expect(value(one, "throat")).toBeCloseTo(z / Math.SQRT2, 9);
    expect(value(one, "nominal-throat")).toBeCloseTo(z / Math.SQRT2, 9);
    expect(value(one, "weld-area")).toBeCloseTo(z ** 2 / 2, 9);
    expect(value(one, "joint-angle")).toBeCloseTo(90, 9);
  });

  it("has no convexity, no penetration and no dilution", () => {
    for (const id of ["convexity", "concavity", "root-penetration", "fused-parent-area", "dilution"] as const)
      expect(value(one, id)).toBeCloseTo(0, 9);
    expect(value(one, "fusion-1-greatest")).toBeCloseTo(0, 9);
    expect(value(one, "fusion-2-least")).toBeCloseTo(0, 9);
  });
});

/** Height of the triangle over two sides and the angle between them: a = z1 z2 sin(t) / c, c by the law of cosines. */
describe("a straight fillet with unequal legs on a skew joint", () => {
  it.each([
    [60, 6, 9],
    [90, 5, 12],
    [120, 8, 7],
  ])("angle %d: throat, inscribed triangle and area", (angleDeg, z1, z2) => {
    const t = (angleDeg * Math.PI) / 180;
    const one = measured(
      [
        [0, 0],
        [z1, 0],
        [z2 * Math.cos(t), z2 * Math.sin(t)],
      ],
      [0, 0],
      angleDeg,
    );
    const c = Math.sqrt(z1 ** 2 + z2 ** 2 - 2 * z1 * z2 * Math.cos(t));
    const foot = (z1 * z2 * Math.sin(t)) / c;
    expect(value(one, "throat")).toBeCloseTo(foot, 9);
    expect(value(one, "nominal-throat")).toBeCloseTo(Math.min(z1, z2) * Math.cos(t / 2), 9);
    expect(value(one, "weld-area")).toBeCloseTo((z1 * z2 * Math.sin(t)) / 2, 9);
    expect(value(one, "joint-angle")).toBeCloseTo(angleDeg, 9);
  });
});

/** Circular segment over a chord c with sagitta h: r = (c^2 / 4 + h^2) / (2 h), A = r^2 (alpha - sin alpha) / 2. */
describe("a face that is an arc of a circle", () => {
  const z = 10;
  const h = 1.2;
  const c = z * Math.SQRT2;
  const r = (c ** 2 / 4 + h ** 2) / (2 * h);
  const half = (Math.asin(c / 2 / r) * 180) / Math.PI;
  const segment = (r ** 2 * (2 * ((half * Math.PI) / 180) - Math.sin((2 * half * Math.PI) / 180))) / 2;
  const middle = z / 2;

  it("convex: convexity h, throat z / sqrt(2) at most through the toes, area and a segment more", () => {
    const centre: Pair = [middle - (r - h) / Math.SQRT2, middle - (r - h) / Math.SQRT2];
    const one = measured([[0, 0], ...arc(centre, r, 45 - half, 45 + half, 10)], [0, 0]);
    expect(value(one, "convexity")).toBeCloseTo(h, 3);
    expect(value(one, "concavity")).toBe(0);
    expect(value(one, "nominal-throat")).toBeCloseTo(z / Math.SQRT2, 6);
    expect(value(one, "weld-area")).toBeCloseTo(z ** 2 / 2 + segment, 2);
  });

  it("concave: concavity h, throat z / sqrt(2) - h, area and a segment less", () => {
    const centre: Pair = [middle + (r - h) / Math.SQRT2, middle + (r - h) / Math.SQRT2];
    const one = measured([[0, 0], ...arc(centre, r, 225 + half, 225 - half, 10)], [0, 0]);
    expect(value(one, "concavity")).toBeCloseTo(h, 3);
    expect(value(one, "convexity")).toBe(0);
    expect(value(one, "throat")).toBeCloseTo(z / Math.SQRT2 - h, 3);
    expect(value(one, "nominal-throat")).toBeCloseTo(z / Math.SQRT2 - h, 3);
    expect(value(one, "weld-area")).toBeCloseTo(z ** 2 / 2 - segment, 2);
  });
});

describe("a fillet melted into its plates", () => {
  /** Melted d deep along both plates, its inner corner at (-d, -d); straight all round. */
  const z = 8;
  const d = 1.5;
  const one = measured(
    [
      [-d, -d],
      [z - d, -d],
      [z, 0],
      [0, z],
      [-d, z - d],
    ],
    [-d, -d],
  );

  it("has that depth on both sides, but for the tenth at each end", () => {
    expect(value(one, "fusion-1-greatest")).toBeCloseTo(d, 9);
    // At nine tenths of the leg the slope under the toe has risen to 0.8 mm below the surface.
    expect(value(one, "fusion-1-least")).toBeCloseTo(0.1 * z, 9);
    expect(value(one, "fusion-2-greatest")).toBeCloseTo(d, 9);
  });

  it("has root penetration d sqrt(2), and throat with penetration that much more", () => {
    expect(value(one, "root-penetration")).toBeCloseTo(d * Math.SQRT2, 9);
    expect(value(one, "throat-with-penetration")).toBeCloseTo(z / Math.SQRT2 + d * Math.SQRT2, 9);
  });

  it("has the melted strips over the whole as its dilution", () => {
    const melted = 2 * (d * (z - d) + d ** 2 / 2) + d ** 2;
    expect(value(one, "fused-parent-area")).toBeCloseTo(melted, 9);
    expect(value(one, "dilution")).toBeCloseTo(melted / (melted + z ** 2 / 2), 9);
  });
});

/** Single V: included angle 60 degrees, land 2 mm, gap 2 mm, plate 10 mm; melted straight down 1 mm beyond everything. */
describe("a single-V butt weld", () => {
  const slope = Math.tan(Math.PI / 6);
  const wide = 1 + 8 * slope;
  const groove = (sign: 1 | -1): readonly Pair[] => [
    [sign * wide, 0],
    [sign * 1, -8],
    [sign * 1, -10],
  ];
  const drawing = {
    schemaVersion: 1 as const,
    joint: "butt" as const,
    outline: (
      [
        [-wide - 1, 0],
        [0, 2],
        [wide + 1, 0],
        [2, -8],
        [2, -10],
        [0, -11.2],
        [-2, -10],
        [-2, -8],
      ] as const
    ).map(px),
    edges: [
      { role: "face" as const, points: [px([-20, 0]), px([20, 0])] },
      { role: "back" as const, points: [px([-20, -10]), px([20, -10])] },
      { role: "groove-1" as const, points: groove(-1).map(px) },
      { role: "groove-2" as const, points: groove(1).map(px) },
    ],
    root: null,
    toes: [null, null] as [null, null],
  };
  const one = measureSection(drawing, calibration);

  it("has thickness, full penetration and nothing unreached", () => {
    expect(one.issues).toEqual([]);
    expect(value(one, "thickness")).toBeCloseTo(10, 9);
    expect(value(one, "penetration")).toBeCloseTo(10, 9);
    expect(value(one, "unreached")).toBe(0);
  });

  it("has its widths and reinforcements", () => {
    expect(value(one, "face-width")).toBeCloseTo(2 * wide + 2, 9);
    expect(value(one, "root-width")).toBeCloseTo(4, 9);
    expect(value(one, "reinforcement")).toBeCloseTo(2, 1);
    expect(value(one, "root-reinforcement")).toBeCloseTo(1.2, 1);
  });

  it("has the strips behind the joint faces over the whole as its dilution", () => {
    const strips = 2 * (1 * 8 + 1 * 2);
    expect(value(one, "fused-parent-area")).toBeCloseTo(strips, 6);
    expect(value(one, "dilution")).toBeCloseTo(strips / value(one, "weld-area"), 9);
    expect(value(one, "fusion-1-greatest")).toBeCloseTo(1, 9);
    expect(value(one, "fusion-2-least")).toBeCloseTo(Math.cos(Math.PI / 6), 6);
  });
});
