import type { GaugeStudy } from "@/lib/gauge";

const rows = (text: string): readonly (readonly number[])[] =>
  text
    .trim()
    .split("\n")
    .map((line) => line.trim().split(/\s+/).map(Number));

/** Rows of parts under each other, three tries to a person: by person, part and try. */
const byPerson = (table: readonly (readonly number[])[]): number[][][] =>
  [0, 1, 2].map((person) =>
    (table[0] ?? []).map((_, part) => [0, 1, 2].map((t) => table[3 * person + t]?.[part] ?? NaN)),
  );

/**
 * AIAG, Measurement Systems Analysis, 3rd and 4th edition, the sheet of ten parts, three appraisers and three trials: a line
 * for each trial, appraiser by appraiser. All ninety numbers are from memory; the sums and figures the handbook prints, from
 * memory too, come out of them to the last printed digit, which wrong numbers would not do.
 */
export const handbook: GaugeStudy = {
  schemaVersion: 1,
  on: "2026-11-20",
  what: "leg",
  unit: "mm",
  people: ["A", "B", "C"],
  parts: Array.from({ length: 10 }, (_, i) => `${i + 1}`),
  tolerance: null,
  values: byPerson(
    rows(`
     0.29 -0.56 1.34 0.47 -0.80  0.02 0.59 -0.31 2.26 -1.36
     0.41 -0.68 1.17 0.50 -0.92 -0.11 0.75 -0.20 1.99 -1.25
     0.64 -0.58 1.27 0.64 -0.84 -0.21 0.66 -0.17 2.01 -1.31
     0.08 -0.47 1.19 0.01 -0.56 -0.20 0.47 -0.63 1.80 -1.68
     0.25 -1.22 0.94 1.03 -1.20  0.22 0.55  0.08 2.12 -1.62
     0.07 -0.68 1.34 0.20 -1.28  0.06 0.83 -0.34 2.19 -1.50
     0.04 -1.38 0.88 0.14 -1.46 -0.29 0.02 -0.46 1.77 -1.49
    -0.11 -1.13 1.09 0.20 -1.07 -0.67 0.01 -0.56 1.45 -1.77
    -0.15 -0.96 0.67 0.11 -1.45 -0.49 0.21 -0.49 1.87 -2.16`),
  ),
};

/**
 * Thermal impedance of ten parts, three inspectors, three tries (Houf and Berman 1988, Quality Engineering 1): as open courses
 * in statistics hand it round (found in one repository of a users' group; confidence: seen there, and its mean squares agree
 * with those of Burdick, Borror and Montgomery 2003, which are from memory).
 */
export const impedance: GaugeStudy = {
  ...handbook,
  what: "thermal impedance",
  values: byPerson(
    rows(`
     37 42 30 42 28 42 25 40 25 35
     38 41 31 43 30 42 26 40 25 34
     37 43 31 42 29 43 27 40 25 34
     41 42 31 43 29 45 28 43 27 35
     41 42 31 43 30 45 28 42 29 35
     40 42 31 43 29 45 30 42 28 34
     41 43 29 42 31 44 29 43 26 35
     42 42 30 42 29 46 27 43 26 34
     41 43 28 42 29 45 27 41 26 35`),
  ),
};

/** A study with these standard deviations, by a generator of its own. */
export function simulated(
  sizes: { readonly people: number; readonly parts: number; readonly tries: number },
  sigmas: { readonly repeat: number; readonly person: number; readonly cross: number; readonly part: number },
  normal: () => number,
): number[][][] {
  const list = (length: number, sigma: number) => Array.from({ length }, () => sigma * normal());
  const parts = list(sizes.parts, sigmas.part);
  return list(sizes.people, sigmas.person).map((person) =>
    parts.map((part) => {
      const cross = sigmas.cross * normal();
      return list(sizes.tries, sigmas.repeat).map((error) => 10 + person + part + cross + error);
    }),
  );
}

/** Normal deviates by Box and Muller out of the minimal standard generator (Park and Miller 1988). */
export function normalsFrom(seed: number): () => number {
  let state = seed;
  const uniform = () => (state = (state * 48271) % 2147483647) / 2147483647;
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}
