import { EigenvalueDecomposition, inverse, Matrix } from "ml-matrix";
import type { AnySpace, Point } from "./point";
import { centroidOf, distance } from "./vector";

export interface Ellipse<S = AnySpace> {
  readonly centre: Point<S>;
  readonly semiMajor: number;
  readonly semiMinor: number;
  /** Direction of the major axis from x towards y, in radians, in (-pi/2, pi/2]. */
  readonly angle: number;
}

/**
 * Direct least-squares ellipse through five or more points (Fitzgibbon, Pilu and Fisher 1999, in the numerically stable
 * form of Halir and Flusser 1998). Null when the points do not fix an ellipse.
 */
export function fitEllipse<S = AnySpace>(points: readonly Point<S>[]): Ellipse<S> | null {
  if (points.length < 5) return null;
  const centre = centroidOf(points);
  const spread = points.reduce((sum, p) => sum + distance(p, centre), 0) / points.length;
  if (!(spread > 0) || !Number.isFinite(spread)) return null;
  const conic = directConic(
    points.map((p) => ({ x: (p.x - centre.x) / spread, y: (p.y - centre.y) / spread })),
  );
  const unit = conic === null ? null : ellipseOfConic(conic);
  if (unit === null) return null;
  return {
    centre: { x: centre.x + spread * unit.centre.x, y: centre.y + spread * unit.centre.y },
    semiMajor: spread * unit.semiMajor,
    semiMinor: spread * unit.semiMinor,
    angle: unit.angle,
  };
}

type Conic = readonly [number, number, number, number, number, number];

function directConic(points: readonly Point[]): Conic | null {
  const quadratic = new Matrix(points.map(({ x, y }) => [x * x, x * y, y * y]));
  const linear = new Matrix(points.map(({ x, y }) => [x, y, 1]));
  const s1 = quadratic.transpose().mmul(quadratic);
  const s2 = quadratic.transpose().mmul(linear);
  const s3 = linear.transpose().mmul(linear);
  // Points in a line leave nothing to invert.
  if (!(Math.abs(determinant3(s3)) > 1e-9)) return null;
  const t = inverse(s3).mmul(s2.transpose()).mul(-1);
  const m = s1.add(s2.mmul(t));
  const reduced = new Matrix([
    m.getRow(2).map((value) => value / 2),
    m.getRow(1).map((value) => -value),
    m.getRow(0).map((value) => value / 2),
  ]);
  const vectors = new EigenvalueDecomposition(reduced).eigenvectorMatrix;
  for (let column = 0; column < 3; column++) {
    const [a = 0, b = 0, c = 0] = vectors.getColumn(column);
    // The one eigenvector for which the conic is an ellipse.
    if (4 * a * c - b * b > 0) {
      const [d = 0, e = 0, f = 0] = t.mmul(Matrix.columnVector([a, b, c])).getColumn(0);
      return [a, b, c, d, e, f];
    }
  }
  return null;
}

function determinant3(m: Matrix): number {
  const [a = 0, b = 0, c = 0] = m.getRow(0);
  const [d = 0, e = 0, f = 0] = m.getRow(1);
  const [g = 0, h = 0, i = 0] = m.getRow(2);
  return a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
}

function ellipseOfConic([a, b, c, d, e, f]: Conic): Ellipse | null {
  const discriminant = 4 * a * c - b * b;
  const centre = { x: (b * e - 2 * c * d) / discriminant, y: (b * d - 2 * a * e) / discriminant };
  const atCentre = f + (d * centre.x + e * centre.y) / 2;
  const middle = (a + c) / 2;
  const half = Math.hypot(a - c, b) / 2;
  const one = -atCentre / (middle + half);
  const other = -atCentre / (middle - half);
  if (!(one > 0) || !(other > 0)) return null;
  const semiMajor = Math.sqrt(Math.max(one, other));
  const semiMinor = Math.sqrt(Math.min(one, other));
  // The quadratic form is largest across the minor axis when a + c > 0, along it otherwise: pick by the sign.
  const sign = middle > 0 ? 1 : -1;
  const angle = 0.5 * Math.atan2(-sign * b, -sign * (a - c));
  return { centre, semiMajor, semiMinor, angle };
}
