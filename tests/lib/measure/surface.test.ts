import { expect, it } from "vitest";
import { calibrate, defaultMeasureOptions } from "@/lib/measure";
import { measureLength } from "@/lib/measure/figures";
import { ScaleSchema, type Scale } from "@/lib/marks";
import { photograph, type Camera } from "./camera";

const camera: Camera = {
  widthPx: 4000,
  heightPx: 3000,
  focalPx: (4000 * 26) / 36,
  distanceMm: 400,
  tiltXDeg: 0,
  tiltYDeg: 0,
  rollDeg: 12,
  cornerShare: 0,
};
const options = { ...defaultMeasureOptions, photo: { widthPx: 4000, heightPx: 3000 } };

function rectangle(at: Camera): Scale {
  const corner = (x: number, y: number) => photograph(at, x, y);
  return {
    kind: "rectangle",
    corners: [corner(-50, -60), corner(50, -60), corner(50, -20), corner(-50, -20)],
    widthMm: 100,
    heightMm: 40,
  };
}

/** 20 mm on a surface `z` above the scale, as it is measured when it is said to lie `aboveMm` above. */
function read(at: Camera, z: number, surface: Scale["surface"]) {
  const calibration = calibrate({ ...rectangle(at), surface }, options);
  if (!calibration.ok) throw new Error(calibration.issues[0]!.code);
  return measureLength(calibration.value, [photograph(at, -4, 10, z), photograph(at, 12, 22, z)]);
}

// Intercept theorem: seen from Z = 400, a surface h = 3 nearer reads large by Z / (Z - h) - 1 = 0.756 %.
it("a surface 3 mm nearer to a camera at 400 mm reads 0.756 % large, and true once its height is said", () => {
  expect(read(camera, 3, undefined).value).toBeCloseTo(20 * (400 / 397), 6);
  expect(read(camera, 3, { aboveMm: 3, plusMinusMm: 0.5 }).value).toBeCloseTo(20, 6);
  expect(read(camera, -3, { aboveMm: -3, plusMinusMm: null }).value).toBeCloseTo(20, 6);
});

it("the same from a camera tilted by 30 degrees, to a tenth of what there was to correct", () => {
  const tilted = { ...camera, tiltXDeg: 30 };
  const wrong = Math.abs(read(tilted, 5, undefined).value - 20);
  expect(wrong).toBeGreaterThan(0.2);
  expect(Math.abs(read(tilted, 5, { aboveMm: 5, plusMinusMm: 0.5 }).value - 20)).toBeLessThan(0.1 * wrong);
});

it("what is said about the height is what its part of the budget holds", () => {
  const part = (surface: Scale["surface"]) =>
    read(camera, 0, surface).budget.find((one) => one.part === "height")!.u;
  // Uniform over half a millimetre to either side: 0.5 / sqrt(3) of 400 mm, on 20 mm (JCGM 100:2008, 4.3.7).
  expect(part({ aboveMm: 0, plusMinusMm: 0.5 })).toBeCloseTo((20 * 0.5) / Math.sqrt(3) / 400, 4);
  expect(part({ aboveMm: 0, plusMinusMm: null })).toBeCloseTo(part(undefined), 9);
  expect(part({ aboveMm: 6, plusMinusMm: 0.5 })).toBeGreaterThan(part({ aboveMm: 0, plusMinusMm: 0.5 }));
});

it("a surface at the camera is refused", () => {
  const found = calibrate(
    { ...rectangle({ ...camera, distanceMm: 120 }), surface: { aboveMm: 95, plusMinusMm: 1 } },
    options,
  );
  expect(found).toMatchObject({ ok: false, issues: [{ code: "surface-too-high" }] });
});

it("a scale stored before heights were asked reads unchanged", () => {
  const old = rectangle(camera);
  expect(ScaleSchema.parse(old)).toEqual(old);
});
