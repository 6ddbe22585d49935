import { distance, type Homography, type Point } from "@/lib/geometry";
import type { Scale } from "@/lib/marks";
import { localScales, mapPoint, thenInPlane } from "./plane-map";
import type { Calibration, PlaneMap } from "./types";

type Variation = Calibration["variations"][number];

/**
 * What the scale cannot see of the camera's tilt.
 *
 * Two points: the tilt about each axis is taken as normal with the stated standard deviation. It makes the near side
 * larger (first order, grows with the distance from the scale object) and shortens one direction against another
 * (second order: the traceless part of half the squared tilt has standard deviation sigma squared over two in each of
 * its two components). The scale object's own length is stated, so every variation is brought back to it: a mark
 * beside and parallel to the rule suffers nothing.
 *
 * Disc: the foreshortening is seen, but not which side is nearer.
 *
 * Rectangle, edges, strip: the homography has taken the tilt out.
 */
export function tiltVariations(
  scale: Scale,
  map: PlaneMap,
  picks: readonly Point[],
  tiltSigmaDeg: number,
  cameraDistanceMm: number,
): readonly Variation[] {
  const sigma = (tiltSigmaDeg * Math.PI) / 180;
  if (scale.kind === "two-points") {
    if (sigma === 0) return [];
    const near = Math.sin(sigma) / cameraDistanceMm;
    const stretch = sigma ** 2 / 2;
    return [
      pair(map, (sign) => [1, 0, 0, 0, 1, 0, sign * near, 0, 1], picks),
      pair(map, (sign) => [1, 0, 0, 0, 1, 0, 0, sign * near, 1], picks),
      pair(map, (sign) => [1 + sign * stretch, 0, 0, 0, 1 - sign * stretch, 0, 0, 0, 1], picks),
      pair(map, (sign) => [1, sign * stretch, 0, sign * stretch, 1, 0, 0, 0, 1], picks),
    ];
  }
  if (scale.kind === "disc") {
    const { largest, smallest } = localScales(map, picks[0]!);
    const sine = Math.sqrt(Math.max(0, 1 - (smallest / largest) ** 2));
    if (sine === 0) return [];
    // The minor axis points along the tilt: it is where the symmetric stretch is greatest.
    const [xx, xy, , , yy] = map.homography;
    const along = 0.5 * Math.atan2(2 * xy, xx - yy);
    const near = sine / cameraDistanceMm;
    return [
      pair(
        map,
        (sign) => [1, 0, 0, 0, 1, 0, sign * near * Math.cos(along), sign * near * Math.sin(along), 1],
        null,
      ),
    ];
  }
  return [];
}

function pair(
  map: PlaneMap,
  change: (sign: 1 | -1) => Homography,
  reference: readonly Point[] | null,
): Variation {
  const side = (sign: 1 | -1): PlaneMap => {
    const changed = thenInPlane(map, change(sign));
    if (reference === null) return changed;
    const back = span(map, reference) / span(changed, reference);
    return thenInPlane(changed, [back, 0, 0, 0, back, 0, 0, 0, 1]);
  };
  return { part: "tilt", plus: side(1), minus: side(-1) };
}

function span(map: PlaneMap, [a, b]: readonly Point[]): number {
  return distance(mapPoint(map, a!), mapPoint(map, b!));
}
