import { Matrix, pseudoInverse, SingularValueDecomposition } from "ml-matrix";
import type { JudgedName } from "./quantities";
import type { Quantity } from "./types";

/** What gauges read on one cross section of a fillet. All but the convexity are lengths; it is below nought when hollow. */
export const filletReadings = [
  "leg1",
  "leg2",
  "throat",
  "convexity",
  "width",
] as const satisfies readonly JudgedName[];
export type FilletReading = (typeof filletReadings)[number];
export type FilletReadings = Readonly<Partial<Record<FilletReading, Quantity | null>>>;

/**
 * Standard deviation of one gauge reading by hand, and of the bead from one place to the next, beside the gauge's own
 * step: own estimate. It serves the test of agreement only, never a limit.
 */
export const HAND_SIGMA_MM = 0.2;

/** 99 % points of chi-square for 1 to 3 degrees of freedom (tables of any handbook of statistics, from memory). */
export const CHI_SQUARE_99 = [0, 6.634897, 9.21034, 11.344867] as const;

/** Two-sided 99 % point of the normal distribution. */
export const NORMAL_99 = 2.575829;

export interface FilletSection {
  /** Every figure as all readings together put it, with U = 2 u; null where they do not determine it. */
  readonly best: Readonly<Record<FilletReading, { readonly value: number; readonly U: number } | null>>;
  /** Sum of squared residuals, each over its variance. */
  readonly chiSquare: number;
  /** Readings beyond those that are needed. */
  readonly redundant: number;
  /** The fewest readings that cannot stand together; empty when all can. */
  readonly conflict: readonly FilletReading[];
  /** Those of the conflict without which the rest agree: read again first. */
  readonly suspects: readonly FilletReading[];
}

/** Distance from toe to toe of a fillet with legs z1 and z2 on plates that stand at `angleDeg` to each other. */
export function toeToToe(z1: number, z2: number, angleDeg = 90): number {
  return Math.sqrt(Math.max(0, z1 ** 2 + z2 ** 2 - 2 * z1 * z2 * Math.cos(radians(angleDeg))));
}

/** Shortest distance from the corner to the straight line from toe to toe: the throat of a flat fillet. */
export function flatThroat(z1: number, z2: number, angleDeg = 90): number {
  const width = toeToToe(z1, z2, angleDeg);
  return width === 0 ? 0 : (z1 * z2 * Math.sin(radians(angleDeg))) / width;
}

/**
 * Leg of the largest equal-legged fillet that fits under a face as near to the corner as `throat`: a / cos(angle / 2),
 * a times root 2 at 90 degrees. It is the size of a fillet whose face is hollow (AWS A3.0, from memory).
 */
export function legOfThroat(throat: number, angleDeg = 90): number {
  return throat / Math.cos(radians(angleDeg) / 2);
}

/** Throat of an equal-legged flat fillet: z cos(angle / 2). */
export function throatOfLeg(leg: number, angleDeg = 90): number {
  return leg * Math.cos(radians(angleDeg) / 2);
}

/**
 * Two legs, throat, convexity and width are three numbers: z1, z2 and the convexity c, with throat = flat throat + c and
 * width = toe to toe. Weighted least squares over whatever was read (Gauss-Newton), and the chi-square test of whether the
 * readings can stand together.
 *
 * @param angleDeg between the plates, 30 to 150 degrees.
 */
export function solveFillet(readings: FilletReadings, angleDeg = 90): FilletSection {
  const rows = filletReadings.flatMap((name): Row[] => {
    const quantity = readings[name];
    return quantity === null || quantity === undefined
      ? []
      : [{ name, value: quantity.value, sigma: Math.hypot(quantity.expandedUncertainty / 2, HAND_SIGMA_MM) }];
  });
  const fit = solve(rows, angleDeg);
  const conflict = agrees(fit) ? [] : fewestInConflict(rows, angleDeg);
  const without = (name: FilletReading): Row[] => rows.filter((row) => row.name !== name);
  return {
    best: bestOf(fit, angleDeg),
    chiSquare: fit.chiSquare,
    redundant: fit.redundant,
    conflict,
    suspects: conflict.filter((name) => agrees(solve(without(name), angleDeg))),
  };
}

interface Row {
  readonly name: FilletReading;
  readonly value: number;
  readonly sigma: number;
}

interface Fit {
  readonly at: readonly [number, number, number];
  /** Covariance of z1, z2, c where the readings determine them. */
  readonly covariance: Matrix;
  /** Directions that no reading holds, as columns. */
  readonly free: readonly (readonly number[])[];
  readonly chiSquare: number;
  /** Greatest residual in units of its own standard deviation: one misread gauge among good ones shows here first. */
  readonly worst: number;
  readonly redundant: number;
}

const STEPS = 12;

function solve(rows: readonly Row[], angleDeg: number): Fit {
  const none = { covariance: Matrix.zeros(3, 3), free: identity, chiSquare: 0, worst: 0, redundant: 0 };
  if (rows.length === 0) return { at: [0, 0, 0], ...none };
  let at = start(rows, angleDeg);
  for (let step = 0; step < STEPS; step++) {
    const jacobian = weighted(rows, at, angleDeg);
    const residual = Matrix.columnVector(
      rows.map(({ name, value, sigma }) => (value - model(name, at, angleDeg)) / sigma),
    );
    const by = pseudoInverse(jacobian).mmul(residual).to1DArray() as [number, number, number];
    at = [positive(at[0], by[0]), positive(at[1], by[1]), at[2] + by[2]];
    if (Math.hypot(...by) < 1e-10) break;
  }
  const jacobian = weighted(rows, at, angleDeg);
  const svd = new SingularValueDecomposition(padded(jacobian), { autoTranspose: true });
  const held = svd.diagonal.filter((value) => value > 1e-6 * (svd.diagonal[0] ?? 0)).length;
  const v = svd.rightSingularVectors;
  const inverse = pseudoInverse(jacobian);
  const residuals = rows.map((row) => (row.value - model(row.name, at, angleDeg)) / row.sigma);
  const hat = jacobian.mmul(inverse);
  // What the fit leaves of a reading's own variance; nought where nothing checks it.
  const left = rows.map((_, i) => 1 - hat.get(i, i));
  return {
    at,
    covariance: inverse.mmul(inverse.transpose()),
    free: [0, 1, 2].slice(held).map((column) => v.getColumn(column)),
    chiSquare: residuals.reduce((sum, residual) => sum + residual ** 2, 0),
    worst: Math.max(
      0,
      ...residuals.map((residual, i) => (left[i]! > 1e-6 ? Math.abs(residual) / Math.sqrt(left[i]!) : 0)),
    ),
    redundant: rows.length - held,
  };
}

const identity: readonly (readonly number[])[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/** At least three rows, so that the decomposition has all three directions. */
function padded(jacobian: Matrix): Matrix {
  const lacks = 3 - jacobian.rows;
  if (lacks <= 0) return jacobian;
  return new Matrix([...jacobian.to2DArray(), ...Array.from({ length: lacks }, () => [0, 0, 0])]);
}

const positive = (now: number, by: number): number => Math.max(now + by, now / 4, 1e-3);

/** Somewhere near: the legs as read, else from throat or width of equal legs. */
function start(rows: readonly Row[], angleDeg: number): [number, number, number] {
  const read = (name: FilletReading): number | null => rows.find((row) => row.name === name)?.value ?? null;
  const throat = read("throat");
  const width = read("width");
  const convexity = read("convexity") ?? 0;
  const guess =
    read("leg1") ??
    read("leg2") ??
    (width !== null ? width / (2 * Math.sin(radians(angleDeg) / 2)) : null) ??
    (throat !== null ? legOfThroat(Math.max(throat - convexity, 0.5), angleDeg) : 5);
  return [Math.max(read("leg1") ?? guess, 1e-3), Math.max(read("leg2") ?? guess, 1e-3), convexity];
}

function model(
  name: FilletReading,
  [z1, z2, c]: readonly [number, number, number],
  angleDeg: number,
): number {
  switch (name) {
    case "leg1":
      return z1;
    case "leg2":
      return z2;
    case "convexity":
      return c;
    case "throat":
      return flatThroat(z1, z2, angleDeg) + c;
    case "width":
      return toeToToe(z1, z2, angleDeg);
  }
}

/** How a reading grows with z1, z2 and c; closed forms. */
function slope(
  name: FilletReading,
  [z1, z2]: readonly [number, number, number],
  angleDeg: number,
): [number, number, number] {
  const w = Math.max(toeToToe(z1, z2, angleDeg), 1e-9);
  const cos = Math.cos(radians(angleDeg));
  const sin = Math.sin(radians(angleDeg));
  const dw1 = (z1 - z2 * cos) / w;
  const dw2 = (z2 - z1 * cos) / w;
  switch (name) {
    case "leg1":
      return [1, 0, 0];
    case "leg2":
      return [0, 1, 0];
    case "convexity":
      return [0, 0, 1];
    case "width":
      return [dw1, dw2, 0];
    case "throat":
      return [
        (z2 * sin) / w - (z1 * z2 * sin * dw1) / w ** 2,
        (z1 * sin) / w - (z1 * z2 * sin * dw2) / w ** 2,
        1,
      ];
  }
}

function weighted(rows: readonly Row[], at: readonly [number, number, number], angleDeg: number): Matrix {
  return new Matrix(rows.map(({ name, sigma }) => slope(name, at, angleDeg).map((value) => value / sigma)));
}

/** The test of all together, and of the one that fits worst (Baarda's w-test, from memory), each at 99 %. */
function agrees({ chiSquare, worst, redundant }: Fit): boolean {
  if (redundant <= 0) return true;
  return worst <= NORMAL_99 && chiSquare <= (CHI_SQUARE_99[Math.min(redundant, 3)] ?? Infinity);
}

/** Subsets from the smallest up: the first that disagrees says most plainly what cannot be. */
function fewestInConflict(rows: readonly Row[], angleDeg: number): readonly FilletReading[] {
  const subsets = Array.from({ length: 2 ** rows.length }, (_, bits) =>
    rows.filter((_row, i) => (bits >> i) & 1),
  )
    .filter(({ length }) => length >= 2)
    .sort((a, b) => a.length - b.length);
  const worst = subsets.find((subset) => !agrees(solve(subset, angleDeg))) ?? rows;
  return worst.map(({ name }) => name);
}

function bestOf(fit: Fit, angleDeg: number): FilletSection["best"] {
  const figure = (name: FilletReading): { value: number; U: number } | null => {
    const gradient = slope(name, fit.at, angleDeg);
    const loose = fit.free.some((way) => Math.abs(dot(way, gradient)) > 1e-6);
    if (loose) return null;
    const g = Matrix.rowVector(gradient);
    const variance = g.mmul(fit.covariance).mmul(g.transpose()).get(0, 0);
    return { value: model(name, fit.at, angleDeg), U: 2 * Math.sqrt(Math.max(0, variance)) };
  };
  return {
    leg1: figure("leg1"),
    leg2: figure("leg2"),
    throat: figure("throat"),
    convexity: figure("convexity"),
    width: figure("width"),
  };
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);
const radians = (degrees: number): number => (degrees * Math.PI) / 180;
