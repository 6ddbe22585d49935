import type { Source } from "@/lib/base";
import type { Gas, Polarity } from "../names";
import { fromMemory, remark } from "../cite";
import type { Span } from "./window-rows";

/** Amps a tungsten of one size carries in argon. */
export interface TungstenRow {
  readonly diameterIn: number;
  readonly amps: Readonly<Record<Polarity, Span | null>>;
}

export const tungstenRows: readonly TungstenRow[] = [
  { diameterIn: 0.04, amps: { DCEN: [15, 80], AC: [20, 60], DCEP: null } },
  { diameterIn: 1 / 16, amps: { DCEN: [70, 150], AC: [60, 120], DCEP: [10, 20] } },
  { diameterIn: 3 / 32, amps: { DCEN: [150, 250], AC: [100, 180], DCEP: [15, 30] } },
  { diameterIn: 1 / 8, amps: { DCEN: [250, 400], AC: [160, 250], DCEP: [25, 40] } },
];
export const tungstenSource: Source = remark(fromMemory, "usual table of tungsten currents in argon");

/** Amps from which solid wire sprays in argon with 2 % oxygen. */
export const sprayRows: readonly {
  readonly diameterIn: number;
  readonly carbonSteel: number;
  readonly stainless: number;
}[] = [
  { diameterIn: 0.03, carbonSteel: 150, stainless: 155 },
  { diameterIn: 0.035, carbonSteel: 165, stainless: 170 },
  { diameterIn: 0.045, carbonSteel: 220, stainless: 225 },
  { diameterIn: 1 / 16, carbonSteel: 275, stainless: 285 },
];
/** More carbon dioxide raises the transition by about this much; past 20 % it does not spray. Own estimate of the spread. */
export const sprayRise: Partial<Readonly<Record<Gas, Span>>> = {
  "98Ar-2O2": [0.95, 1.05],
  "98Ar-2CO2": [0.95, 1.1],
  "90Ar-10CO2": [1, 1.15],
  "80Ar-20CO2": [1.05, 1.3],
};
export const spraySource: Source = remark(
  fromMemory,
  "usual table of globular-to-spray transition currents in 98 % argon; the rise with carbon dioxide is our estimate",
);
