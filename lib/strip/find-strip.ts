import aruco from "js-aruco2";
import { fail, issue, ok, type Issue, type Result } from "@/lib/base";
import { add, distance, subtract, times, type Point } from "@/lib/geometry";
import { shrunk, type RgbaImage } from "./grey-image";
import { takeOutSpread, type CornerOnPage } from "./ink-spread";
import { refineMarker } from "./refine-marker";
import { markerCorners, STRIP_DICTIONARY, stripMarkerIds } from "./strip-layout";

export type StripIssueCode = "strip-not-found" | "strip-cut" | "strip-too-small" | "strip-bent";
export type StripIssue = Issue<StripIssueCode>;

/** What a strip scale is made of: corners in photo pixels with their place on the strip, and what one is worth. */
export interface FoundStrip {
  readonly corners: readonly (Point<"photo"> & { readonly xMm: number; readonly yMm: number })[];
  readonly cornerSigmaPx: number;
}

/** A marker must be this large to carry 1 % on its side with corners good to a third of a pixel. */
const LEAST_SIDE_PX = 36;
/** What refined corners are worth at best: simulated, own estimate. */
const LEAST_SIGMA_PX = 0.1;
/**
 * A flat strip fits one plane to this share of a marker's side, or to a quarter of a pixel: on rendered photographs with the
 * lens errors of a phone flat ones stay below 0.16 px, and one bowed by 3 mm in the middle does not. Own estimate.
 */
const WORST_MISFIT_SHARE = 0.0025;
const WORST_MISFIT_PX = 0.25;
/** The detector looks for square outlines in a picture no larger than this; corners are refined in the full one. */
const SEARCH_PX = 1400;

/**
 * Finds the printed scale strip in a photo without a click. Pure: reads the pixels it is given.
 *
 * Errors: strip-not-found; strip-cut (only part of it is in the picture or in sight); strip-too-small (`sidePx`, the
 * shortest side of a marker); strip-bent (`misfitPx`: its corners do not lie in one plane).
 */
export function findStrip(image: RgbaImage): Result<FoundStrip, StripIssue> {
  const found = detect(image);
  if (found.length === 0) return fail(issue("strip-not-found"));
  if (found.length < stripMarkerIds.length)
    return fail(issue("strip-cut", [], { found: found.length, wanted: stripMarkerIds.length }));
  const sidePx = Math.min(
    ...found.flatMap(({ corners }) => corners.map((corner, i) => distance(corner, corners[(i + 1) % 4]!))),
  );
  if (sidePx < LEAST_SIDE_PX) return fail(issue("strip-too-small", [], { sidePx: Math.round(sidePx) }));
  const corners = found.flatMap(({ id, corners: seen }): CornerOnPage[] => {
    const refined = refineMarker(image, seen);
    const page = markerCorners(id);
    if (refined === null || page === null) return [];
    const middle = times(add(page[0]!, page[2]!), 0.5);
    return refined.map((at, i) => {
      const out = subtract(page[i]!, middle);
      return { seen: at, page: page[i]!, out: { x: Math.sign(out.x), y: Math.sign(out.y) } };
    });
  });
  if (corners.length < 4 * stripMarkerIds.length)
    return fail(issue("strip-cut", [], { found: corners.length / 4, wanted: stripMarkerIds.length }));
  const flat = takeOutSpread(corners);
  if (flat === null || !(flat.misfitPx <= Math.max(WORST_MISFIT_PX, WORST_MISFIT_SHARE * sidePx)))
    return fail(issue("strip-bent", [], { misfitPx: Number((flat?.misfitPx ?? 99).toFixed(2)) }));
  return ok({
    corners: flat.corners.map(({ x, y }, i) => ({
      x,
      y,
      xMm: corners[i]!.page.x,
      yMm: corners[i]!.page.y,
    })),
    cornerSigmaPx: Math.max(LEAST_SIGMA_PX, flat.misfitPx),
  });
}

/** One marker of each id of the strip, corners in pixels of the full picture. */
function detect(
  image: RgbaImage,
): readonly { readonly id: number; readonly corners: readonly Point<"photo">[] }[] {
  const small = shrunk(image, SEARCH_PX);
  const detector = new aruco.AR.Detector({ dictionaryName: STRIP_DICTIONARY, maxHammingDistance: 5 });
  const data = new Uint8ClampedArray(small.image.data);
  const all = detector.detectImage(small.image.width, small.image.height, data);
  return stripMarkerIds.flatMap((id) => {
    // The library counts whole pixels by their index: the middle of a pixel lies half a pixel further.
    const best = all.filter((one) => one.id === id).sort((a, b) => a.hammingDistance - b.hammingDistance)[0];
    if (best === undefined) return [];
    return [{ id, corners: best.corners.map((c) => times({ x: c.x + 0.5, y: c.y + 0.5 }, small.block)) }];
  });
}
