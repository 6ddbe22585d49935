import { EigenvalueDecomposition, Matrix, solve } from "ml-matrix";
import { fShareAbove, studentQuantile } from "@/lib/numeric";
import { leastSquares, type Fit } from "./least-squares";
import { pureError } from "./scatter";

type Coded = readonly number[];

export interface Predicted {
  readonly value: number;
  /** One further bead is to be expected between these with 95 %; null where nothing is left over to know the scatter by. */
  readonly low: number | null;
  readonly high: number | null;
}

export interface Surface {
  readonly order: 1 | 2;
  readonly coefficients: readonly number[];
  /** Standard deviation of what is left over; null without degrees of freedom. */
  readonly s: number | null;
  readonly degrees: number;
  readonly predict: (x: Coded) => Predicted;
  /** Variance of the surface itself at a point, as a multiple of the variance of one bead. */
  readonly leverage: (x: Coded) => number;
  readonly lackOfFit: LackOfFit | null;
  /** Where a second-order surface is level; null for a first-order one or a ridge without end. */
  readonly stationary: Stationary | null;
}

export interface LackOfFit {
  readonly f: number;
  readonly degrees: readonly [model: number, pure: number];
  /** How often scatter alone would make so large an f. */
  readonly p: number;
}

export interface Stationary {
  readonly at: Coded;
  readonly value: number;
  readonly kind: "least" | "most" | "saddle";
  readonly eigenvalues: readonly number[];
  /** Whether it lies where beads were run. */
  readonly inside: boolean;
}

/** 1, the knobs; for the second order their products, then their squares. */
function termsOf(x: Coded, order: 1 | 2): readonly number[] {
  if (order === 1) return [1, ...x];
  const products = x.flatMap((a, i) => x.slice(i + 1).map((b) => a * b));
  return [1, ...x, ...products, ...x.map((a) => a * a)];
}

/** A response surface over coded points by least squares; null where the runs do not determine it. */
export function fitSurface(points: readonly Coded[], y: readonly number[], order: 1 | 2): Surface | null {
  const fit = leastSquares(
    points.map((x) => termsOf(x, order)),
    y,
  );
  if (fit === null) return null;
  const s = fit.degrees > 0 ? Math.sqrt(fit.residualSum / fit.degrees) : null;
  const t = studentQuantile(0.975, fit.degrees);
  return {
    order,
    coefficients: fit.coefficients,
    s,
    degrees: fit.degrees,
    predict: (x) => {
      const row = termsOf(x, order);
      const value = row.reduce((sum, term, i) => sum + term * fit.coefficients[i]!, 0);
      const half = s === null ? null : t * s * Math.sqrt(1 + fit.leverage(row));
      return { value, low: half === null ? null : value - half, high: half === null ? null : value + half };
    },
    leverage: (x) => fit.leverage(termsOf(x, order)),
    lackOfFit: lackOfFit(points, y, fit),
    stationary: order === 2 ? stationary(fit.coefficients, points) : null,
  };
}

/** Whether the surface misses the settings' own means by more than repeats scatter. NIST/SEMATECH e-Handbook 4.4.4.6. */
function lackOfFit(points: readonly Coded[], y: readonly number[], fit: Fit): LackOfFit | null {
  const pure = pureError(points.map((at, i) => ({ at, value: y[i]! })));
  const degrees = fit.degrees - pure.degrees;
  if (pure.degrees === 0 || degrees <= 0 || pure.sum === 0) return null;
  const f = (fit.residualSum - pure.sum) / degrees / (pure.sum / pure.degrees);
  return { f, degrees: [degrees, pure.degrees], p: fShareAbove(Math.max(0, f), degrees, pure.degrees) };
}

/** x = -B⁻¹b/2 with the kind told by the signs of B's eigenvalues. */
function stationary(coefficients: readonly number[], points: readonly Coded[]): Stationary | null {
  const k = points[0]!.length;
  const b = coefficients.slice(1, k + 1);
  const products = coefficients.slice(k + 1, coefficients.length - k);
  const squares = coefficients.slice(coefficients.length - k);
  const B = Matrix.zeros(k, k);
  let next = 0;
  for (let i = 0; i < k; i += 1) {
    B.set(i, i, squares[i]!);
    for (let j = i + 1; j < k; j += 1) {
      const half = products[next++]! / 2;
      B.set(i, j, half).set(j, i, half);
    }
  }
  const eigenvalues = [...new EigenvalueDecomposition(B, { assumeSymmetric: true }).realEigenvalues].sort(
    (p, q) => p - q,
  );
  const largest = Math.max(...eigenvalues.map(Math.abs));
  if (!(largest > 0) || eigenvalues.some((value) => Math.abs(value) < 1e-9 * largest)) return null;
  const at = solve(B, Matrix.columnVector([...b]))
    .mul(-0.5)
    .to1DArray();
  const value = coefficients[0]! + 0.5 * at.reduce((sum, x, i) => sum + x * b[i]!, 0);
  const kind = eigenvalues[0]! > 0 ? "least" : eigenvalues[k - 1]! < 0 ? "most" : "saddle";
  const inside = at.every((x, i) => {
    const own = points.map((point) => point[i]!);
    return x >= Math.min(...own) && x <= Math.max(...own);
  });
  return { at, value, kind, eigenvalues, inside };
}
