import { cite } from "../cite";

/** A size sold under two names that are not one diameter: 1.2 mm wire and .045 in wire (1.143 mm). */
export interface WireSizePair {
  /** As the set-up stores it. */
  readonly nominalMm: number;
  readonly inches: number;
  /** Whether wire is also drawn to the metric size; the others are inch sizes under a rounded name. */
  readonly soldMetric: boolean;
}

export const wireSizePairs: readonly WireSizePair[] = [
  { nominalMm: 0.6, inches: 0.023, soldMetric: true },
  { nominalMm: 0.8, inches: 0.03, soldMetric: true },
  { nominalMm: 0.9, inches: 0.035, soldMetric: true },
  { nominalMm: 1, inches: 0.04, soldMetric: true },
  { nominalMm: 1.1, inches: 0.045, soldMetric: false },
  { nominalMm: 1.2, inches: 0.045, soldMetric: true },
  { nominalMm: 1.3, inches: 0.052, soldMetric: false },
  { nominalMm: 1.4, inches: 0.052, soldMetric: true },
  { nominalMm: 1.6, inches: 1 / 16, soldMetric: true },
  { nominalMm: 1.7, inches: 0.068, soldMetric: false },
  { nominalMm: 1.8, inches: 0.072, soldMetric: false },
  { nominalMm: 2, inches: 5 / 64, soldMetric: true },
  { nominalMm: 2.4, inches: 3 / 32, soldMetric: true },
  { nominalMm: 2.8, inches: 7 / 64, soldMetric: false },
  { nominalMm: 3, inches: 0.12, soldMetric: false },
  { nominalMm: 3.2, inches: 1 / 8, soldMetric: true },
  { nominalMm: 4, inches: 5 / 32, soldMetric: true },
  { nominalMm: 4.8, inches: 3 / 16, soldMetric: false },
];

export const wireSizePairsSource = cite("aws-a5-20", "memory", {
  clause: "table of standard sizes",
  note: "A5.18 has the same sizes",
});
