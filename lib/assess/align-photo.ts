import {
  applyHomography,
  axisFrame,
  homographyJacobian,
  horizonSide,
  multiplyHomography,
  pointAlong,
  polylineLength,
  type Homography,
  type Point,
} from "@/lib/geometry";
import { shapePoints, type Drawing } from "@/lib/marks";
import type { Calibrated, Calibration } from "@/lib/measure";
import { assessedPhotos, type Assessed } from "./assessed-bead";

/** Photo pixels to the frame of a weld, which `AlignedPhoto` tells of. */
export type ToFrame = Homography<"photo", "frame">;

/**
 * A photo laid along its weld: what takes its upright pixels to a frame with the weld's start at the origin, its end on
 * positive x and y downwards.
 *
 * - "to-scale": the frame is in mm, in the plane of the scale.
 * - "turned": without a working scale; the frame is in lengths of the weld's chord, so its end lies at x = 1.
 * - "as-taken": without a weld line there is nothing to turn by.
 */
export type AlignedPhoto =
  | {
      readonly kind: "to-scale";
      readonly toFrame: ToFrame;
      /** Where the weld's end lies, mm. */
      readonly endMm: number;
      /** Whether the tilt of the camera is taken out; two picked points do not show it. */
      readonly isFlat: boolean;
      readonly tiltDeg: number | null;
    }
  | { readonly kind: "turned"; readonly toFrame: ToFrame }
  | { readonly kind: "as-taken" };

const mirror: Homography<"plane", "plane"> = [1, 0, 0, 0, -1, 0, 0, 0, 1];
const zoom = (by: number): Homography<"frame", "frame"> => [by, 0, 0, 0, by, 0, 0, 0, 1];

/** See `AlignedPhoto`: every stored photo of a bead, in their order. */
export function alignPhotos(bead: Assessed): readonly AlignedPhoto[] {
  return assessedPhotos(bead).map(({ photo, found }) =>
    alignPhoto(photo.drawing, found?.calibration ?? null),
  );
}

/** By the calibration that its sizes come from, so that the picture is to scale where the sizes are. */
export function alignPhoto(drawing: Drawing, calibration: Calibrated | null): AlignedPhoto {
  const { weldLine } = drawing;
  const turn = weldLine && axisFrame<"photo", "frame">(weldLine);
  if (!weldLine || !turn) return { kind: "as-taken" };
  const scaled = calibration?.ok ? toScale(calibration.value, drawing, weldLine) : null;
  if (scaled) return scaled;
  const chord = applyHomography(turn, weldLine.at(-1)!).x;
  return { kind: "turned", toFrame: multiplyHomography(zoom(1 / chord), turn) };
}

/** Null where the marked weld does not lie wholly before the horizon of the scale's plane. */
function toScale(
  calibration: Calibration,
  drawing: Drawing,
  weldLine: readonly Point<"photo">[],
): AlignedPhoto | null {
  // A calibration has no lens of its own: that stands among its variations.
  const plane = calibration.map.homography;
  const middle = pointAlong(weldLine, polylineLength(weldLine) / 2)!;
  const side = horizonSide(plane, middle);
  const marked = [...weldLine, ...drawing.marks.flatMap(({ shape }) => shapePoints(shape))];
  if (!marked.every((point) => horizonSide(plane, point) === side)) return null;
  const [a, b, c, d] = homographyJacobian(plane, middle);
  // Corners picked the other way round give a map that shows the plate from behind.
  const facing = a * d - b * c < 0 ? multiplyHomography(mirror, plane) : plane;
  const line = weldLine.map((point) => applyHomography(facing, point));
  const turn = axisFrame<"plane", "frame">(line);
  if (!turn) return null;
  return {
    kind: "to-scale",
    toFrame: multiplyHomography(turn, facing),
    endMm: applyHomography(turn, line.at(-1)!).x,
    isFlat: calibration.kind !== "two-points",
    tiltDeg: calibration.tiltDeg,
  };
}
