import type { Point } from "@/lib/geometry";
import type { Scale } from "@/lib/marks";
import { calibrate, defaultMeasureOptions, type MeasureOptions } from "@/lib/measure";
import type { SectionDrawing } from "@/lib/section";

/** A photo of 20 px per mm, looked at square, in which nothing is uncertain: figures come out as the geometry has them. */
export const PX_PER_MM = 20;
export const exact: MeasureOptions = {
  ...defaultMeasureOptions,
  pickSigmaPx: 0,
  statedLengthRelativeU: 0,
  heightHalfWidthMm: 0,
  tiltSigmaDeg: 0,
  lensCornerRelativeU: 0,
};
export const scale: Scale = {
  kind: "two-points",
  a: { x: 100, y: 1900 },
  b: { x: 100 + 50 * PX_PER_MM, y: 1900 },
  lengthMm: 50,
};
export const calibration = calibrate(scale, exact);

/** Millimetres, y upwards, to the photo. */
export const px = ([x, y]: readonly [number, number]): Point => ({
  x: 800 + PX_PER_MM * x,
  y: 1000 - PX_PER_MM * y,
});

export type Pair = readonly [number, number];

/** A fillet in the corner of plate 1 along +x and plate 2 turned up from it by `angleDeg`. */
export function filletDrawing(outline: readonly Pair[], root: Pair | null, angleDeg = 90): SectionDrawing {
  const t = (angleDeg * Math.PI) / 180;
  const [c, s] = [Math.cos(t), Math.sin(t)];
  return {
    schemaVersion: 1,
    joint: "fillet",
    outline: outline.map(px),
    edges: [
      { role: "plate-1", points: [px([0, 0]), px([20, 0])] },
      { role: "plate-2", points: [px([0, 0]), px([20 * c, 20 * s])] },
    ],
    root: root === null ? null : px(root),
    toes: [null, null],
  };
}

/** Points on an arc of a circle, both ends included. */
export function arc(
  centre: Pair,
  radius: number,
  fromDeg: number,
  toDeg: number,
  pieces: number,
): readonly Pair[] {
  return Array.from({ length: pieces + 1 }, (_, i) => {
    const t = ((fromDeg + ((toDeg - fromDeg) * i) / pieces) * Math.PI) / 180;
    return [centre[0] + radius * Math.cos(t), centre[1] + radius * Math.sin(t)] as const;
  });
}
