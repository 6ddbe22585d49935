import type { Homography } from "@/lib/geometry";
import type { Scale } from "@/lib/marks";
import { focalRelativeU } from "./options";
import type { MeasureOptions } from "./types";

/** Nearer to the camera than this share of its height above the scale nothing is measured by that scale. */
export const LEAST_SURFACE_FACTOR = 0.3;

/**
 * What a plane parallel to the scale's takes from its mm, seen from `cameraHeightMm` above the scale: 1 - h / H, by the
 * intercept theorem; and how well that is known, from the stated spread (half-width, uniform) and from the camera's
 * height, where that rests on the usual focal length.
 */
export function surfaceOf(
  { surface }: Scale,
  { heightHalfWidthMm, cameraDistanceMm }: MeasureOptions,
  cameraHeightMm: number,
): { readonly factor: number; readonly relativeU: number } {
  const aboveMm = surface?.aboveMm ?? 0;
  const spreadMm = (surface?.plusMinusMm ?? heightHalfWidthMm) / Math.sqrt(3);
  const cameraMm = cameraDistanceMm === null ? aboveMm * focalRelativeU : 0;
  const factor = 1 - aboveMm / cameraHeightMm;
  return { factor, relativeU: Math.hypot(spreadMm, cameraMm) / cameraHeightMm / factor };
}

export const zoomBy = (factor: number): Homography<"plane", "plane"> => [factor, 0, 0, 0, factor, 0, 0, 0, 1];
