import { fail, issue, ok } from "@/lib/base";
import { centroidOf, type Point } from "@/lib/geometry";
import type { Scale } from "@/lib/marks";
import { phoneFocalShare, usualCameraDistanceMm, worstScaleRelativeU } from "./options";
import { localScales, mapPoint, mapPoints, thenInPlane } from "./plane-map";
import { scaleMiddle, scaleModel, type CameraGuess, type ScaleModel } from "./scale-model";
import { pickSigma } from "./pick-sigma";
import { pickVariations } from "./pick-variations";
import { LEAST_SURFACE_FACTOR, surfaceOf, zoomBy } from "./surface";
import { tiltVariations } from "./tilt-variations";
import type {
  BudgetPartName,
  Calibrated,
  Calibration,
  MeasureIssue,
  MeasureOptions,
  PlaneMap,
} from "./types";

type Variation = Calibration["variations"][number];

/**
 * Turns the scale of a drawing into the map from photo pixels to mm and everything that may be wrong about it.
 *
 * @returns The calibration, or an issue: no-scale, scale-points-coincide, scale-corners-crossed, scale-not-an-ellipse,
 *   strip-does-not-fit (the corners do not lie in one plane: bent or misread), scale-too-small (more than 10 % uncertain),
 *   surface-too-high.
 */
export function calibrate(scale: Scale | null, options: MeasureOptions): Calibrated {
  if (scale === null) return fail(issue("no-scale", ["scale"]));
  const camera = cameraGuess(options);
  const model = scaleModel(scale, camera);
  const fitted = model.fit(model.picks, null);
  if (!fitted.ok) return fitted;
  const map = fitted.value;
  const misfit = scale.kind === "strip" ? stripMisfit(scale, map) : null;
  if (misfit !== null) return fail(misfit);

  const middle = centroidOf(model.picks);
  const scales = localScales(map, middle);
  const foreshortening = Math.min(1, scales.smallest / scales.largest);
  const pickSigmaPx = options.pickSigmaPx * options.photoPxPerViewPx;
  // Along the line of sight. A plane h above the scale's is seen larger by h over the camera's height above the plate.
  const distanceMm = cameraDistance(camera, scales.smallest);
  const surface = surfaceOf(scale, options, distanceMm * foreshortening);
  if (!(surface.factor > LEAST_SURFACE_FACTOR)) return fail(issue("surface-too-high", ["scale", "surface"]));
  const sigmas = { pickSigmaPx, viewedSigmaPx: options.pickSigmaPx };
  const picks = pickVariations(model, map, (pick) => model.sigmaPx ?? pickSigma(sigmas, pick));
  const others = [
    zoom("scale-length", map, options.statedLengthRelativeU),
    zoom("height", map, surface.relativeU),
    ...tiltVariations(scale, model, map, options.tiltSigmaDeg, { ...camera, distanceMm }),
    ...lensVariations(model, map, options),
  ];
  const relativeU = scaleRelativeU(picks, map, model.picks);
  if (!(relativeU <= worstScaleRelativeU))
    return fail(issue("scale-too-small", ["scale"], { relativeU: Number(relativeU.toPrecision(3)) }));
  return ok({
    kind: scale.kind,
    middle: scaleMiddle(scale),
    ...onSurface(map, [...picks, ...others], surface.factor),
    ...sigmas,
    mmPerPx: surface.factor * Math.sqrt(scales.largest * scales.smallest),
    tiltDeg: scale.kind === "two-points" ? null : (Math.acos(foreshortening) * 180) / Math.PI,
  });
}

/** The map and its variations from the plane of the scale to that of the marks. */
function onSurface(map: PlaneMap, variations: readonly Variation[], factor: number) {
  const moved = (one: PlaneMap): PlaneMap => thenInPlane(one, zoomBy(factor));
  return {
    map: moved(map),
    variations: variations.map((v) => ({ ...v, plus: moved(v.plus), minus: moved(v.minus) })),
  };
}

/** An error in size alone, the same everywhere. */
function zoom(part: BudgetPartName, map: PlaneMap, relativeU: number): Variation {
  return {
    part,
    plus: thenInPlane(map, zoomBy(1 + relativeU)),
    minus: thenInPlane(map, zoomBy(1 - relativeU)),
  };
}

/** A stated distance says more than the usual lens: then the focal length follows from it and the scale. */
function cameraGuess({ photo, cameraDistanceMm }: MeasureOptions): CameraGuess {
  return {
    centre: photo && { x: photo.widthPx / 2, y: photo.heightPx / 2 },
    focalPx: photo && cameraDistanceMm === null ? usualFocalPx(photo) : null,
    distanceMm: cameraDistanceMm ?? usualCameraDistanceMm,
  };
}

function usualFocalPx(photo: NonNullable<MeasureOptions["photo"]>): number {
  return phoneFocalShare * Math.max(photo.widthPx, photo.heightPx);
}

/** From the width of the view when only the photo's size is known: mm per px times the focal length in px. */
function cameraDistance({ focalPx, distanceMm }: CameraGuess, mmPerPx: number): number {
  return focalPx === null ? distanceMm : focalPx * mmPerPx;
}

/** The scale object is seen through the same lens as the mark, so each variation fits it again. */
function lensVariations(
  model: ScaleModel,
  map: PlaneMap,
  { photo, lensCornerRelativeU: u }: MeasureOptions,
): readonly Variation[] {
  if (u === 0) return [];
  if (photo === null) return [zoom("lens", map, u)];
  const lens = {
    centre: { x: photo.widthPx / 2, y: photo.heightPx / 2 },
    halfDiagonalPx: Math.hypot(photo.widthPx, photo.heightPx) / 2,
  };
  const plus = model.fit(model.picks, { ...lens, cornerShare: u });
  const minus = model.fit(model.picks, { ...lens, cornerShare: -u });
  return plus.ok && minus.ok ? [{ part: "lens", plus: plus.value, minus: minus.value }] : [];
}

/** How uncertain the picks leave the size of the scale object itself. */
function scaleRelativeU(
  variations: readonly Variation[],
  map: PlaneMap,
  picks: readonly Point<"photo">[],
): number {
  const size = (m: PlaneMap): number => {
    const middle = centroidOf(mapPoints(m, picks));
    return picks.reduce((sum, pick) => {
      const { x, y } = mapPoint(m, pick);
      return sum + Math.hypot(x - middle.x, y - middle.y);
    }, 0);
  };
  const whole = size(map);
  // The picks are held here and the map moves: for two points the size would stay, so the map's own size is compared.
  const squares = variations.map((v) => ((size(v.plus) - size(v.minus)) / 2 / whole) ** 2);
  return Math.sqrt(squares.reduce((sum, square) => sum + square, 0));
}

/** Corners of a flat strip fit one plane to within their own error; a bent one does not. */
function stripMisfit(scale: Extract<Scale, { kind: "strip" }>, map: PlaneMap): MeasureIssue | null {
  const squares = scale.corners.map((corner) => {
    const at = mapPoint(map, corner);
    const { largest, smallest } = localScales(map, corner);
    const off = Math.hypot(at.x - corner.xMm * scale.printFactor, at.y - corner.yMm * scale.printFactor);
    return off ** 2 / (largest * smallest);
  });
  // Two coordinates a corner, eight of them spent on the map.
  const freedom = 2 * squares.length - 8;
  if (freedom <= 0) return null;
  const rmsPx = Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / freedom);
  return rmsPx > 4 * scale.cornerSigmaPx
    ? issue("strip-does-not-fit", ["scale"], { rmsPx: Number(rmsPx.toPrecision(3)) })
    : null;
}
