import { cite } from "@/lib/trade";

/** What method B goes by. */
export interface PreheatAsked {
  readonly cetPercent: number;
  readonly thicknessMm: number;
  readonly hydrogenMlPer100G: number;
  readonly heatKJPerMm: number;
}

/** Between these the method was made; from memory. */
const holds = {
  cetPercent: [0.2, 0.5],
  thicknessMm: [10, 90],
  hydrogenMlPer100G: [1, 20],
  heatKJPerMm: [0.5, 4],
} as const satisfies Readonly<Record<keyof PreheatAsked, readonly [number, number]>>;

export interface Preheat {
  /** °C; below room temperature none is called for. */
  readonly celsius: number;
  /** What lies outside the range the method was made for; empty: it holds. */
  readonly outside: readonly (keyof PreheatAsked)[];
}

/** Preheat by EN 1011-2 method B. A number outside its range is given with what lies outside, never as if it held. */
export function preheatMethodB(asked: PreheatAsked): Preheat {
  const { cetPercent, thicknessMm, hydrogenMlPer100G, heatKJPerMm } = asked;
  const celsius =
    697 * cetPercent +
    160 * Math.tanh(thicknessMm / 35) +
    62 * hydrogenMlPer100G ** 0.35 +
    (53 * cetPercent - 32) * heatKJPerMm -
    328;
  const names = Object.keys(holds) as (keyof PreheatAsked)[];
  return {
    celsius,
    outside: names.filter((name) => asked[name] < holds[name][0] || asked[name] > holds[name][1]),
  };
}

export const preheatSource = cite("en-1011-2", "memory", {
  clause: "method B",
  note: "formula read in a quotation, its range from memory; check your copy",
});
