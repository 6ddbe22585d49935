import { distance, type Homography, type Point } from "@/lib/geometry";
import type { Scale } from "@/lib/marks";
import { focalRelativeU } from "./options";
import { mapPoint, thenInPlane } from "./plane-map";
import { scaleModel, type CameraGuess, type ScaleModel } from "./scale-model";
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
 * Disc: the foreshortening is seen, but not which side is nearer: either pose, as likely as the other. However the camera
 * is usually held, odds from it would hold the truth in too few of the photos taken otherwise; with even odds the interval
 * holds it as often whichever pose is the true one.
 *
 * Rectangle, edges, strip: the homography has taken the tilt out.
 */
export function tiltVariations(
  scale: Scale,
  model: ScaleModel,
  map: PlaneMap,
  tiltSigmaDeg: number,
  camera: CameraGuess & { readonly distanceMm: number },
): readonly Variation[] {
  const { picks } = model;
  const sigma = (tiltSigmaDeg * Math.PI) / 180;
  if (scale.kind === "two-points") {
    if (sigma === 0) return [];
    const near = Math.sin(sigma) / camera.distanceMm;
    const stretch = sigma ** 2 / 2;
    return [
      pair(map, (sign) => [1, 0, 0, 0, 1, 0, sign * near, 0, 1], picks),
      pair(map, (sign) => [1, 0, 0, 0, 1, 0, 0, sign * near, 1], picks),
      pair(map, (sign) => [1 + sign * stretch, 0, 0, 0, 1 - sign * stretch, 0, 0, 0, 1], picks),
      pair(map, (sign) => [1, sign * stretch, 0, sign * stretch, 1, 0, 0, 0, 1], picks),
    ];
  }
  if (model.twins === null) return [];
  const { maps, perspective } = model.twins;
  return [
    { part: "near-side", plus: maps[0], minus: maps[1], odds: 0.5 },
    { part: "tilt", plus: perspective[0], minus: perspective[1] },
    ...focalVariations(scale, camera),
  ];
}

/** How the off-axis view of a disc is parted from its tilt depends on the focal length. */
function focalVariations(scale: Scale, camera: CameraGuess): readonly Variation[] {
  const { focalPx } = camera;
  if (focalPx === null) return [];
  const [plus, minus] = [1 + focalRelativeU, 1 / (1 + focalRelativeU)].map((share) => {
    const model = scaleModel(scale, { ...camera, focalPx: focalPx * share });
    return model.fit(model.picks, null);
  });
  return plus!.ok && minus!.ok ? [{ part: "tilt", plus: plus!.value, minus: minus!.value }] : [];
}

function pair(
  map: PlaneMap,
  change: (sign: 1 | -1) => Homography<"plane", "plane">,
  reference: readonly Point<"photo">[],
): Variation {
  const side = (sign: 1 | -1): PlaneMap => {
    const changed = thenInPlane(map, change(sign));
    const back = span(map, reference) / span(changed, reference);
    return thenInPlane(changed, [back, 0, 0, 0, back, 0, 0, 0, 1]);
  };
  return { part: "tilt", plus: side(1), minus: side(-1) };
}

function span(map: PlaneMap, [a, b]: readonly Point<"photo">[]): number {
  return distance(mapPoint(map, a!), mapPoint(map, b!));
}
