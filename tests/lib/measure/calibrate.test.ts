import { describe, expect, it } from "vitest";
import { calibrate, defaultMeasureOptions, mapPoint, type MeasureOptions } from "@/lib/measure";
import { measureLength } from "@/lib/measure/figures";
import type { Scale } from "@/lib/marks";
import { photograph, type Camera } from "./camera";

const exact: MeasureOptions = {
  ...defaultMeasureOptions,
  pickSigmaPx: 0,
  statedLengthRelativeU: 0,
  heightHalfWidthMm: 0,
  tiltSigmaDeg: 0,
  lensCornerRelativeU: 0,
};
const square: Camera = {
  widthPx: 4000,
  heightPx: 3000,
  focalPx: 2889,
  distanceMm: 400,
  tiltXDeg: 0,
  tiltYDeg: 0,
  rollDeg: 0,
  cornerShare: 0,
};
const rule = (camera: Camera): Scale => ({
  kind: "two-points",
  a: photograph(camera, -50, 0),
  b: photograph(camera, 50, 0),
  lengthMm: 100,
});

function lengthOf(camera: Camera, ends: readonly [number, number, number][], scale = rule(camera)): number {
  const calibration = calibrate(scale, exact);
  if (!calibration.ok) throw new Error(calibration.issues[0]!.code);
  return measureLength(
    calibration.value,
    ends.map(([x, y, z]) => photograph(camera, x, y, z)),
  ).value;
}

/** Biases of a two-point scale, worked out by us from the pinhole camera; no published source. */
describe("what a two-point scale cannot see", () => {
  it("reads 0.756 % too long 3 mm above the plane at 400 mm: Z / (Z - h) - 1", () => {
    const read = lengthOf(square, [
      [-10, 0, 3],
      [10, 0, 3],
    ]);
    expect(100 * (read / 20 - 1)).toBeCloseTo(0.756, 3);
  });

  it.each([
    [10, 1.52],
    [20, 6.03],
  ])("loses 1 - cos of a tilt of %s degrees across the tilt: %s %%", (tiltXDeg, percent) => {
    // Far off, so that perspective does not mix in.
    const far = { ...square, tiltXDeg, distanceMm: 1e6, focalPx: 1e7 };
    const read = lengthOf(far, [
      [0, -10, 0],
      [0, 10, 0],
    ]);
    expect(100 * (1 - read / 20)).toBeCloseTo(percent, 2);
  });

  it("says so in the budget: tilt and height are parts of a length across the rule", () => {
    const calibration = calibrate(rule(square), { ...defaultMeasureOptions, cameraDistanceMm: 400 });
    if (!calibration.ok) throw new Error("no calibration");
    const across = measureLength(calibration.value, [photograph(square, 0, -10), photograph(square, 0, 10)]);
    const part = (name: string): number => across.budget.find((one) => one.part === name)?.u ?? 0;
    // u = sigma^2 sin(angle to the rule), here 20 mm at right angles; and h / sqrt(3) / Z.
    expect(part("tilt")).toBeCloseTo(20 * ((5 * Math.PI) / 180) ** 2, 3);
    expect(part("height")).toBeCloseTo((20 * 2) / Math.sqrt(3) / 400, 6);
  });
});

describe("calibrate", () => {
  const tilted = { ...square, tiltXDeg: 25, tiltYDeg: -12, rollDeg: 40, distanceMm: 250 };
  const at = (x: number, y: number) => photograph(tilted, x, y);
  const page = [at(0, 0), at(85.6, 0), at(85.6, 53.98), at(0, 53.98)] as const;

  it("takes the perspective out exactly with a rectangle, by corners or by edges", () => {
    const corners: Scale = { kind: "rectangle", corners: [...page], widthMm: 85.6, heightMm: 53.98 };
    const edge = (a: number[], b: number[]): [ReturnType<typeof at>, ReturnType<typeof at>] => [
      at(a[0]!, a[1]!),
      at(b[0]!, b[1]!),
    ];
    const edges: Scale = {
      kind: "edges",
      edges: [
        edge([10, 0], [70, 0]),
        edge([85.6, 8], [85.6, 40]),
        edge([70, 53.98], [10, 53.98]),
        edge([0, 40], [0, 8]),
      ],
      widthMm: 85.6,
      heightMm: 53.98,
    };
    for (const scale of [corners, edges])
      expect(
        lengthOf(
          tilted,
          [
            [-30, 20, 0],
            [-10, 41, 0],
          ],
          scale,
        ),
      ).toBeCloseTo(29, 6);
  });

  it("sees the tilt of a rectangle and of a disc far off, and none with two points", () => {
    const far = { ...square, tiltXDeg: 30, distanceMm: 1e5, focalPx: 1e6 };
    const rim = Array.from({ length: 8 }, (_, i) =>
      photograph(far, 12.875 * Math.cos(i), 12.875 * Math.sin(i)),
    );
    const disc = calibrate({ kind: "disc", rim, diameterMm: 25.75 }, { ...exact, cameraDistanceMm: 1e5 });
    expect(disc.ok && disc.value.tiltDeg).toBeCloseTo(30, 2);
    const two = calibrate(rule(far), exact);
    expect(two.ok && two.value.tiltDeg).toBeNull();
  });

  it.each([
    ["no-scale", null],
    ["scale-points-coincide", { kind: "two-points", a: page[0], b: page[0], lengthMm: 10 }],
    ["scale-too-small", { kind: "two-points", a: { x: 0, y: 0 }, b: { x: 15, y: 0 }, lengthMm: 10 }],
    [
      "scale-corners-crossed",
      { kind: "rectangle", corners: [page[0], page[2], page[1], page[3]], widthMm: 9, heightMm: 5 },
    ],
    [
      "scale-not-an-ellipse",
      { kind: "disc", rim: [0, 1, 2, 3, 4].map((x) => ({ x: 100 * x, y: 0 })), diameterMm: 20 },
    ],
  ] as [string, Scale | null][])("refuses: %s", (code, scale) => {
    const result = calibrate(scale, defaultMeasureOptions);
    expect(result.ok ? "calibrated" : result.issues[0]!.code).toBe(code);
  });

  it("refuses a strip whose corners do not lie in one plane", () => {
    const corners = Array.from({ length: 12 }, (_, i) => {
      const [xMm, yMm] = [10 * (i % 6), 16 * Math.floor(i / 6)];
      const p = photograph(square, xMm, yMm, i === 3 ? 18 : 0);
      return { ...p, xMm, yMm };
    });
    const strip = (list: typeof corners): Scale => ({
      kind: "strip",
      corners: list,
      cornerSigmaPx: 0.3,
      printFactor: 1,
    });
    const bent = calibrate(strip(corners), defaultMeasureOptions);
    expect(bent.ok ? "calibrated" : bent.issues[0]!.code).toBe("strip-does-not-fit");
    const flat = calibrate(strip(corners.filter((_, i) => i !== 3)), defaultMeasureOptions);
    expect(flat.ok).toBe(true);
  });

  it("follows the print factor of a strip", () => {
    const corners = [0, 1, 2, 3, 4, 5, 6, 7].map((i) => {
      const [xMm, yMm] = [20 * (i % 4), 16 * Math.floor(i / 4)];
      return { ...photograph(square, xMm * 0.97, yMm * 0.97), xMm, yMm };
    });
    const result = calibrate({ kind: "strip", corners, cornerSigmaPx: 0.3, printFactor: 0.97 }, exact);
    if (!result.ok) throw new Error("no calibration");
    const [a, b] = [photograph(square, 3, 3), photograph(square, 23, 3)].map((p) =>
      mapPoint(result.value.map, p),
    );
    expect(b!.x - a!.x).toBeCloseTo(20, 6);
  });
});
