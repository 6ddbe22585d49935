import { fail, issue, ok, type Result } from "@/lib/base";
import {
  crossesItself,
  fitHomography,
  linesMeet,
  midpoint,
  centroidOf,
  signedArea,
  type Ellipse,
  type Point,
} from "@/lib/geometry";
import { scalePoints, type PhotoPoint, type Scale } from "@/lib/marks";
import { discPose, type View } from "./disc-pose";
import { focalRelativeU } from "./options";
import { straighten } from "./plane-map";
import type { MeasureIssue, PlaneMap, PlanePoint } from "./types";

type PhotoToPlane = PlaneMap["homography"];

/** A scale as the numbers that were picked and the map they make: what the calibration displaces one at a time. */
export interface ScaleModel {
  /** Picked points in photo pixels. */
  readonly picks: readonly PhotoPoint[];
  /** Standard deviation per axis of one of them; null: that of an ordinary pick. */
  readonly sigmaPx: number | null;
  /** The map made by these picks under this lens; an issue when they make none. */
  readonly fit: (picks: readonly Point<"photo">[], lens: PlaneMap["lens"]) => Result<PlaneMap, MeasureIssue>;
  /** Two maps that the picks leave open between them; null when they leave one. */
  readonly twins: {
    readonly maps: readonly [PlaneMap, PlaneMap];
    /** The map under what the focal length leaves open of either twin's perspective, to either side. */
    readonly perspective: readonly [PlaneMap, PlaneMap];
  } | null;
}

/** What is known of the camera: where the photo's middle lies, and how far its focal length or its distance. */
export interface CameraGuess {
  readonly centre: Point<"photo"> | null;
  readonly focalPx: number | null;
  /** Taken when the focal length is unknown. */
  readonly distanceMm: number;
}

/** Only a disc asks how the camera looks; the others show their perspective or cannot use it. */
export function scaleModel(scale: Scale, camera: CameraGuess): ScaleModel {
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
      return discModel(scale, camera);
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
  fit: (picks: readonly Point<"photo">[]) => Result<PhotoToPlane, MeasureIssue>,
): ScaleModel {
  return {
    picks,
    sigmaPx,
    fit: (points, lens) => {
      const homography = fit(points.map((point) => straighten(lens, point)));
      return homography.ok ? ok({ homography: homography.value, lens }) : homography;
    },
    twins: null,
  };
}

/** Two points fix size, not direction: mm from the middle between them, axes parallel to the photo's. */
function similarity(picks: readonly Point<"photo">[], lengthMm: number): Result<PhotoToPlane, MeasureIssue> {
  const [a, b] = picks as [Point<"photo">, Point<"photo">];
  const span = Math.hypot(b.x - a.x, b.y - a.y);
  if (!(span > 0)) return fail(issue("scale-points-coincide", ["scale"]));
  const s = lengthMm / span;
  const middle = midpoint(a, b);
  return ok([s, 0, -s * middle.x, 0, s, -s * middle.y, 0, 0, 1]);
}

function rectangle(
  corners: readonly Point<"photo">[],
  widthMm: number,
  heightMm: number,
): Result<PhotoToPlane, MeasureIssue> {
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
function isConvex(ring: readonly Point<"photo">[]): boolean {
  const n = ring.length;
  const turns = ring.map((p, i) => Math.sign(signedArea([p, ring[(i + 1) % n]!, ring[(i + 2) % n]!])));
  return turns[0] !== 0 && turns.every((turn) => turn === turns[0]);
}

/** Edges top, right, bottom, left as eight picks; their meeting points from the top left, clockwise. */
function cornersOfEdges(picks: readonly Point<"photo">[]): readonly Point<"photo">[] | null {
  const edge = (index: number): [Point<"photo">, Point<"photo">] => {
    const i = (index % 4) * 2;
    return [picks[i]!, picks[i + 1]!];
  };
  const corners = [3, 0, 1, 2].map((index) => linesMeet(...edge(index), ...edge(index + 1)));
  return corners.every((corner) => corner !== null) ? corners : null;
}

/**
 * Of the two tilts that a disc leaves open the map is the middle; the twins are the two. A tilt's perspective in the
 * photo goes with its tangent over the focal length, so it is known only as well as that.
 */
function discModel(scale: Extract<Scale, { kind: "disc" }>, camera: CameraGuess): ScaleModel {
  const view = ({ centre, semiMajor }: Ellipse<"photo">): View => ({
    focalPx: camera.focalPx ?? (camera.distanceMm * semiMajor) / (scale.diameterMm / 2),
    centre: camera.centre ?? centre,
  });
  const pose = (picks: readonly Point<"photo">[]) => discPose(picks, scale.diameterMm, view);
  const seen = pose(scale.rim);
  const bare = ([one, other]: readonly [PhotoToPlane, PhotoToPlane]) =>
    [
      { homography: one, lens: null },
      { homography: other, lens: null },
    ] as const;
  return {
    ...modelOf(scale.rim, null, (picks) => {
      const found = pose(picks);
      return found === null ? fail(issue("scale-not-an-ellipse", ["scale"])) : ok(found.middle);
    }),
    twins: seen && { maps: bare(seen.poses), perspective: bare(seen.leaning(focalRelativeU)) },
  };
}

function strip(
  corners: readonly Point<"photo">[],
  page: readonly PlanePoint[],
): Result<PhotoToPlane, MeasureIssue> {
  const h = fitHomography(corners, page);
  return h === null ? fail(issue("strip-does-not-fit", ["scale"])) : ok(h);
}

/** The middle of the scale object in the photo. */
export function scaleMiddle(scale: Scale): Point<"photo"> {
  return centroidOf(scalePoints(scale));
}
