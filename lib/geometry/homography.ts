import { Matrix, SingularValueDecomposition } from "ml-matrix";
import type { AnySpace, Point } from "./point";

declare const ways: unique symbol;

/**
 * A projective map of the plane, row by row, scaled so that the last entry is 1 where it can be. From points of `From` to
 * points of `To`; nine bare numbers enter as whichever they are handed to.
 */
export type Homography<From = AnySpace, To = AnySpace> = readonly [
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
] & {
  /** Never there, as in `Point`. */
  readonly [ways]?: { readonly from: (within: From) => From; readonly to: (within: To) => To };
};

/**
 * The homography that takes `from` to `to`, least squares in the algebraic sense when there are more than four pairs.
 * Normalised direct linear transformation (Hartley and Zisserman, Multiple View Geometry, 2nd ed., algorithm 4.2).
 * Null when the points do not fix one: fewer than four, or three of four in a line.
 */
export function fitHomography<From = AnySpace, To = AnySpace>(
  from: readonly Point<From>[],
  to: readonly Point<To>[],
): Homography<From, To> | null {
  if (from.length < 4 || from.length !== to.length) return null;
  const a = normaliser(from);
  const b = normaliser(to);
  if (a === null || b === null) return null;
  const rows: number[][] = [];
  from.forEach((point, index) => {
    const { x, y } = applyHomography(a, point);
    const image = applyHomography(b, to[index]!);
    rows.push([0, 0, 0, -x, -y, -1, image.y * x, image.y * y, image.y]);
    rows.push([x, y, 1, 0, 0, 0, -image.x * x, -image.x * y, -image.x]);
  });
  while (rows.length < 9) rows.push(new Array<number>(9).fill(0)); // the SVD wants a square system for four pairs
  const svd = new SingularValueDecomposition(new Matrix(rows), { autoTranspose: false });
  const values = svd.diagonal;
  // Rank 8 is what fixes the map: a second vanishing value means points in a line or repeated.
  if (!((values[7] ?? 0) > 1e-9 * (values[0] ?? 0))) return null;
  const h = svd.rightSingularVectors.getColumn(8) as unknown as Homography;
  // Three of four in a line are still fitted, by a map that squeezes the plane: it is not one to one.
  if (!(Math.abs(determinant(h)) > 1e-9)) return null;
  const inverse = invertHomography(b);
  return inverse === null ? null : scaled(multiplyHomography(inverse, multiplyHomography(h, a)));
}

/** The image of a point; NaN or infinite on the line that the map sends to infinity. */
export function applyHomography<From, To>(h: Homography<From, To>, { x, y }: Point<From>): Point<To> {
  const w = h[6] * x + h[7] * y + h[8];
  return { x: (h[0] * x + h[1] * y + h[2]) / w, y: (h[3] * x + h[4] * y + h[5]) / w };
}

/** First `b`, then `a`. */
export function multiplyHomography<From, Between, To>(
  a: Homography<Between, To>,
  b: Homography<From, Between>,
): Homography<From, To> {
  const entry = (row: 0 | 1 | 2, column: 0 | 1 | 2): number =>
    [0, 1, 2].reduce((sum, k) => sum + a[3 * row + k]! * b[3 * k + column]!, 0);
  const row = (r: 0 | 1 | 2): [number, number, number] => [entry(r, 0), entry(r, 1), entry(r, 2)];
  return [...row(0), ...row(1), ...row(2)];
}

/** The map back, up to scale (the adjugate); null when the map is not one to one. */
export function invertHomography<From, To>(h: Homography<From, To>): Homography<To, From> | null {
  const [a, b, c, d, e, f, g, k, l] = h;
  const inverse: Homography = [
    e * l - f * k,
    c * k - b * l,
    b * f - c * e,
    f * g - d * l,
    a * l - c * g,
    c * d - a * f,
    d * k - e * g,
    b * g - a * k,
    a * e - b * d,
  ];
  const size = determinant(h);
  return Math.abs(size) > 0 && Number.isFinite(size) ? scaled(inverse) : null;
}

function determinant([a, b, c, d, e, f, g, k, l]: Homography): number {
  return a * (e * l - f * k) - b * (d * l - f * g) + c * (d * k - e * g);
}

/** Partial derivatives of the image: [dx'/dx, dx'/dy, dy'/dx, dy'/dy]. */
export function homographyJacobian<From>(
  h: Homography<From>,
  point: Point<From>,
): readonly [number, number, number, number] {
  const w = h[6] * point.x + h[7] * point.y + h[8];
  const image = applyHomography(h, point);
  return [
    (h[0] - h[6] * image.x) / w,
    (h[1] - h[7] * image.x) / w,
    (h[3] - h[6] * image.y) / w,
    (h[4] - h[7] * image.y) / w,
  ];
}

/** Sign of w: points on different sides of the horizon have different signs. */
export function horizonSide<From>(h: Homography<From>, { x, y }: Point<From>): number {
  return Math.sign(h[6] * x + h[7] * y + h[8]);
}

/** Moves the points' centroid to the origin and their mean distance to the square root of 2. */
function normaliser(points: readonly Point[]): Homography | null {
  const n = points.length;
  const cx = points.reduce((sum, p) => sum + p.x, 0) / n;
  const cy = points.reduce((sum, p) => sum + p.y, 0) / n;
  const mean = points.reduce((sum, p) => sum + Math.hypot(p.x - cx, p.y - cy), 0) / n;
  if (!(mean > 0) || !Number.isFinite(mean)) return null;
  const s = Math.SQRT2 / mean;
  return [s, 0, -s * cx, 0, s, -s * cy, 0, 0, 1];
}

function scaled(h: Homography): Homography {
  const last = h[8];
  const norm = Math.hypot(...h);
  // A map whose last entry vanishes is still a map: keep it at unit norm.
  const by = Math.abs(last) > 1e-12 * norm ? last : norm;
  return h.map((value) => value / by) as unknown as Homography;
}
