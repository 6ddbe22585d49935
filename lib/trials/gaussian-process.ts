import { CholeskyDecomposition, Matrix } from "ml-matrix";

type Coded = readonly number[];

/** How a response is taken to run over coded knobs. */
export interface Kernel {
  /** Standard deviation of the course about its level, in the response's unit. */
  readonly height: number;
  /** How far, in coded units, a knob is turned before the response is another one; one a knob. */
  readonly reach: readonly number[];
}

export interface Believed {
  readonly mean: number;
  /** Standard deviation of the course itself; a further bead scatters by the noise besides. */
  readonly sd: number;
}

export interface Process {
  readonly at: (x: Coded) => Believed;
  /** Logarithm of how likely the runs are under this kernel and noise, the level being given its best value. */
  readonly logLikelihood: number;
}

/** Matérn's covariance of order 5/2 (Rasmussen and Williams 2006, eq. 4.17). */
export function covariance({ height, reach }: Kernel, a: Coded, b: Coded): number {
  const r = Math.hypot(...a.map((v, i) => (v - b[i]!) / reach[i]!));
  const scaled = Math.sqrt(5) * r;
  return height ** 2 * (1 + scaled + (scaled * scaled) / 3) * Math.exp(-scaled);
}

/**
 * A Gaussian process about an unknown level, seen through noise of a stated standard deviation (Rasmussen and Williams
 * 2006, eq. 2.25, 2.26, 2.41 and 2.42). Each point is one bead.
 */
export function gaussianProcess(
  points: readonly Coded[],
  y: readonly number[],
  kernel: Kernel,
  noise: number,
): Process {
  const n = points.length;
  const K = new Matrix(
    points.map((a, i) => points.map((b, j) => covariance(kernel, a, b) + (i === j ? noise ** 2 : 0))),
  );
  const chol = new CholeskyDecomposition(K);
  const solved = (v: readonly number[]): number[] => chol.solve(Matrix.columnVector([...v])).to1DArray();
  const ones = Array.from({ length: n }, () => 1);
  const byOnes = solved(ones);
  const weight = sum(byOnes);
  const level = dot(byOnes, y) / weight;
  const left = y.map((value) => value - level);
  const byLeft = solved(left);
  const lower = chol.lowerTriangularMatrix;
  const logDet = 2 * sum(Array.from({ length: n }, (_, i) => Math.log(lower.get(i, i))));
  // Asked at hundreds of places, and only of the kernel that is kept: worked out when it is first asked for.
  let inverse: readonly (readonly number[])[] | null = null;
  return {
    at: (x) => {
      const k = points.map((point) => covariance(kernel, point, x));
      inverse ??= chol.solve(Matrix.eye(n)).to2DArray();
      const byK = inverse.map((row) => dot(row, k));
      const unexplained = 1 - sum(byK);
      const variance = kernel.height ** 2 - dot(k, byK) + unexplained ** 2 / weight;
      return { mean: level + dot(k, byLeft), sd: Math.sqrt(Math.max(0, variance)) };
    },
    logLikelihood: -0.5 * (dot(left, byLeft) + logDet + n * Math.log(2 * Math.PI)),
  };
}

/** Reaches that are tried, in coded units: from a third of the range to a course that hardly bends. Own choice. */
const REACHES = [0.6, 1, 1.6, 2.5, 4] as const;
/** Heights that are tried, as multiples of the spread that was seen. Own choice. */
const HEIGHTS = [1, 2, 4] as const;
/** A bead's response bends about once over the range before anything is seen: log-normal about this reach. Own choice. */
const USUAL = { reach: 2, spread: 0.6 } as const;

/** The kernel under which the runs are likeliest, courses of the usual reach being preferred. */
export function fittedProcess(points: readonly Coded[], y: readonly number[], noise: number): Process {
  const middle = sum(y) / y.length;
  const seen = Math.sqrt(sum(y.map((value) => (value - middle) ** 2)) / y.length);
  const heights = HEIGHTS.map((times) => times * Math.max(seen, noise));
  const reaches = points[0]!.reduce<number[][]>(
    (lists) => lists.flatMap((list) => REACHES.map((reach) => [...list, reach])),
    [[]],
  );
  let best: { readonly made: Process; readonly score: number } | null = null;
  for (const reach of reaches) {
    const usual = -0.5 * sum(reach.map((r) => (Math.log(r / USUAL.reach) / USUAL.spread) ** 2));
    for (const height of heights) {
      const made = gaussianProcess(points, y, { height, reach }, noise);
      const score = made.logLikelihood + usual;
      if (best === null || score > best.score) best = { made, score };
    }
  }
  return best!.made;
}

const sum = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0);
const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((s, v, i) => s + v * b[i]!, 0);
