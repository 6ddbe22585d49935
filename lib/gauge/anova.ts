import { fShareAbove } from "@/lib/numeric";
import type { StudyValues } from "./study";

export interface AnovaLine {
  readonly sumOfSquares: number;
  readonly degrees: number;
  readonly meanSquare: number;
}

/** Two-way analysis of variance of people crossed with parts, all tries as often. */
export interface Anova {
  readonly people: AnovaLine;
  readonly parts: AnovaLine;
  readonly interaction: AnovaLine;
  readonly repeatability: AnovaLine;
  readonly total: AnovaLine;
  /** Interaction against repeatability; null where both are nought. */
  readonly f: number | null;
  /** Share of chance that gives as much; null as above. */
  readonly p: number | null;
  readonly sizes: { readonly people: number; readonly parts: number; readonly tries: number };
}

/** Below this share of the largest reading, squared, a sum of squares is what rounding leaves. */
const ROUNDING = 1e-13;

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const mean = (values: readonly number[]): number => sum(values) / values.length;

/**
 * Sums of squares of a crossed study with equal cells (AIAG, Measurement Systems Analysis, 4th edition, appendix A; restated
 * from memory; the arithmetic is that of any textbook of the design of experiments).
 *
 * @param values By person, part and try: at least two of each, none missing.
 */
export function crossedAnova(values: StudyValues): Anova {
  const [o, p, r] = [values.length, values[0]?.length ?? 0, values[0]?.[0]?.length ?? 0];
  const all = values.flat(2);
  const floor = (ROUNDING * Math.max(...all.map(Math.abs))) ** 2 * all.length;
  const line = (squares: readonly number[], times: number, degrees: number): AnovaLine => {
    const found = times * sum(squares);
    const sumOfSquares = found <= floor ? 0 : found;
    return { sumOfSquares, degrees, meanSquare: sumOfSquares / degrees };
  };
  const squares = squaresOf(values, p);
  const interaction = line(squares.interaction, r, (o - 1) * (p - 1));
  const repeatability = line(squares.repeatability, 1, o * p * (r - 1));
  return {
    people: line(squares.people, p * r, o - 1),
    parts: line(squares.parts, o * r, p - 1),
    interaction,
    repeatability,
    total: line(squares.total, 1, o * p * r - 1),
    ...testOf(interaction, repeatability),
    sizes: { people: o, parts: p, tries: r },
  };
}

/** Squares of what each mean, each cell and each reading lies off. */
function squaresOf(values: StudyValues, p: number) {
  const all = values.flat(2);
  const middle = mean(all);
  const personMeans = values.map((own) => mean(own.flat()));
  const partMeans = Array.from({ length: p }, (_, j) => mean(values.flatMap((own) => own[j] ?? [])));
  const cells = values.map((own) => own.map(mean));
  const square = (value: number): number => value * value;
  return {
    people: personMeans.map((value) => square(value - middle)),
    parts: partMeans.map((value) => square(value - middle)),
    interaction: cells.flatMap((own, i) =>
      own.map((cell, j) => square(cell - (personMeans[i] ?? 0) - (partMeans[j] ?? 0) + middle)),
    ),
    repeatability: values.flatMap((own, i) =>
      own.flatMap((one, j) => one.map((value) => square(value - (cells[i]?.[j] ?? 0)))),
    ),
    total: all.map((value) => square(value - middle)),
  };
}

function testOf(one: AnovaLine, other: AnovaLine): Pick<Anova, "f" | "p"> {
  if (other.meanSquare === 0) return one.meanSquare === 0 ? { f: null, p: null } : { f: Infinity, p: 0 };
  const f = one.meanSquare / other.meanSquare;
  return { f, p: fShareAbove(f, one.degrees, other.degrees) };
}
