import { fail, ok, type Result } from "@/lib/base";
import {
  crossesItself,
  fitEllipse,
  fitHomography,
  linesMeet,
  midpoint,
  centroidOf,
  signedArea,
  type Homography,
  type Point,
} from "@/lib/geometry";
import type { PhotoPoint, Scale } from "@/lib/marks";
import { issue } from "@/lib/base";
import { straighten } from "./plane-map";
import type { MeasureIssue, PlaneMap } from "./types";

/** A scale as the numbers that were picked and the map they make: what the calibration displaces one at a time. */
export interface ScaleModel {
  /** Picked points in photo pixels. */
  readonly picks: readonly PhotoPoint[];
  /** Standard deviation per axis of one of them; null: that of an ordinary pick. */
  readonly sigmaPx: number | null;
  /** The map made by these picks under this lens; an issue when they make none. */
  readonly fit: (picks: readonly Point[], lens: PlaneMap["lens"]) => Result<PlaneMap, MeasureIssue>;
}

export function scaleModel(scale: Scale): ScaleModel {
  switch (scale.kind) {
    case "two-points":
      return modelOf([scale.a, scale.b], null, (picks) => similarity(picks, scale.lengthMm));
    case "rectangle":
      return modelOf(scale.corners, null, (picks) => rectangle(picks, scale.widthMm, scale.heightMm));
    case "edges":
      return modelOf(scale.edges.flat(), null, (picks) => {
        const corners = cornersOfEdges(picks);
        return corners === null
          ? fail(issue("scale-corners-crossed", ["scale"]))
          : rectangle(corners, scale.widthMm, scale.heightMm);
      });
    case "disc":
      return modelOf(scale.rim, null, (picks) => disc(picks, scale.diameterMm));
    case "strip": {
      const page = scale.corners.map(({ xMm, yMm }) => ({
        x: xMm * scale.printFactor,
        y: yMm * scale.printFactor,
      }));
      return modelOf(scale.corners, scale.cornerSigmaPx, (picks) => strip(picks, page));
    }
  }
}

function modelOf(
  picks: readonly PhotoPoint[],
  sigmaPx: number | null,
  fit: (picks: readonly Point[]) => Result<Homography, MeasureIssue>,
): ScaleModel {
  return {
    picks,
    sigmaPx,
    fit: (points, lens) => {
      const homography = fit(points.map((point) => straighten(lens, point)));
      return homography.ok ? ok({ homography: homography.value, lens }) : homography;
    },
  };
}

/** Two points fix size, not direction: mm from the middle between them, axes parallel to the photo's. */
function similarity(picks: readonly Point[], lengthMm: number): Result<Homography, MeasureIssue> {
  const [a, b] = picks as [Point, Point];
  const span = Math.hypot(b.x - a.x, b.y - a.y);
  if (!(span > 0)) return fail(issue("scale-points-coincide", ["scale"]));
  const s = lengthMm / span;
  const middle = midpoint(a, b);
  return ok([s, 0, -s * middle.x, 0, s, -s * middle.y, 0, 0, 1]);
}

function rectangle(
  corners: readonly Point[],
  widthMm: number,
  heightMm: number,
): Result<Homography, MeasureIssue> {
  const crossed = fail(issue("scale-corners-crossed" as const, ["scale"]));
  if (crossesItself(corners) || !isConvex(corners)) return crossed;
  const page = [
    { x: 0, y: 0 },
    { x: widthMm, y: 0 },
    { x: widthMm, y: heightMm },
    { x: 0, y: heightMm },
  ];
  const h = fitHomography(corners, page);
  return h === null ? crossed : ok(h);
}

/** A rectangle seen from the front is a convex outline, whatever the perspective. */
function isConvex(ring: readonly Point[]): boolean {
  const n = ring.length;
  const turns = ring.map((p, i) => Math.sign(signedArea([p, ring[(i + 1) % n]!, ring[(i + 2) % n]!])));
  return turns[0] !== 0 && turns.every((turn) => turn === turns[0]);
}

/** Edges top, right, bottom, left as eight picks; their meeting points from the top left, clockwise. */
function cornersOfEdges(picks: readonly Point[]): readonly Point[] | null {
  const edge = (index: number): [Point, Point] => {
    const i = (index % 4) * 2;
    return [picks[i]!, picks[i + 1]!];
  };
  const corners = [3, 0, 1, 2].map((index) => linesMeet(...edge(index), ...edge(index + 1)));
  return corners.every((corner) => corner !== null) ? corners : null;
}

/**
 * A disc seen from far off is an ellipse, and the stretch that makes it round again is the foreshortening. The stretch is
 * symmetric, axes parallel to the photo's: for a nearly round ellipse the direction of its axes is chance, and a frame
 * laid along them would turn with it. Which side is nearer an ellipse cannot say: see `tiltVariations`.
 */
function disc(rim: readonly Point[], diameterMm: number): Result<Homography, MeasureIssue> {
  const ellipse = fitEllipse(rim);
  if (ellipse === null) return fail(issue("scale-not-an-ellipse", ["scale"]));
  const { centre, angle } = ellipse;
  const major = diameterMm / 2 / ellipse.semiMajor;
  const minor = diameterMm / 2 / ellipse.semiMinor;
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const xx = major * c * c + minor * s * s;
  const xy = (major - minor) * c * s;
  const yy = major * s * s + minor * c * c;
  return ok([xx, xy, -(xx * centre.x + xy * centre.y), xy, yy, -(xy * centre.x + yy * centre.y), 0, 0, 1]);
}

function strip(corners: readonly Point[], page: readonly Point[]): Result<Homography, MeasureIssue> {
  const h = fitHomography(corners, page);
  return h === null ? fail(issue("strip-does-not-fit", ["scale"])) : ok(h);
}

/** The middle of the scale object in the photo. */
export function scaleMiddle(scale: Scale): Point {
  return centroidOf(scaleModel(scale).picks);
}
