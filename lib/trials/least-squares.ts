import { inverse, Matrix, QrDecomposition } from "ml-matrix";

export interface Fit {
  readonly coefficients: readonly number[];
  /** Sum of the squares of what is left. */
  readonly residualSum: number;
  /** Runs beyond the coefficients. */
  readonly degrees: number;
  readonly residuals: readonly number[];
  /** Variance of a fitted value at a row, as a multiple of the variance of one run. */
  readonly leverage: (row: readonly number[]) => number;
}

/** Least squares by Householder's QR; null where the rows do not determine every coefficient. */
export function leastSquares(rows: readonly (readonly number[])[], y: readonly number[]): Fit | null {
  const width = rows[0]?.length ?? 0;
  if (width === 0 || rows.length < width || rows.length !== y.length) return null;
  const x = new Matrix(rows.map((row) => [...row]));
  const qr = new QrDecomposition(x);
  if (!qr.isFullRank()) return null;
  const solved = qr.solve(Matrix.columnVector([...y]));
  const coefficients = solved.to1DArray();
  const residuals = y.map((value, i) => value - dot(rows[i]!, coefficients));
  const root = inverse(qr.upperTriangularMatrix);
  return {
    coefficients,
    residualSum: residuals.reduce((sum, r) => sum + r * r, 0),
    degrees: rows.length - width,
    residuals,
    // (X'X)^-1 is the square of the inverse of R.
    leverage: (row) =>
      norm2(
        Matrix.rowVector([...row])
          .mmul(root)
          .to1DArray(),
      ),
  };
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, v, i) => sum + v * b[i]!, 0);
const norm2 = (a: readonly number[]): number => dot(a, a);
