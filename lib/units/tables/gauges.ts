import type { Source } from "@/lib/base";
import { cite } from "@/lib/trade";

export interface Gauge {
  readonly number: number;
  /** Weight that defines the gauge, ounces per square foot. */
  readonly ozPerSqFt: number;
  /** Thickness by that weight, as tables print it: inches to four places. */
  readonly inches: number;
}

export interface GaugeTable {
  readonly metal: GaugeMetal;
  readonly gauges: readonly Gauge[];
  readonly source: Source;
}
export type GaugeMetal = "steel" | "stainless";

const row = (number: number, ozPerSqFt: number, inches: number): Gauge => ({ number, ozPerSqFt, inches });

/** Uncoated carbon steel sheet. Thickness = weight / 41.82 lb/ft² per inch, to four places: a test recomputes each row. */
export const steelGauges: GaugeTable = {
  metal: "steel",
  source: cite("sheet-gauge-manufacturers", "memory", {
    note: "each row agrees with its defining weight over 41.82 lb/ft² per inch",
  }),
  gauges: [
    row(3, 160, 0.2391),
    row(4, 150, 0.2242),
    row(5, 140, 0.2092),
    row(6, 130, 0.1943),
    row(7, 120, 0.1793),
    row(8, 110, 0.1644),
    row(9, 100, 0.1495),
    row(10, 90, 0.1345),
    row(11, 80, 0.1196),
    row(12, 70, 0.1046),
    row(13, 60, 0.0897),
    row(14, 50, 0.0747),
    row(15, 45, 0.0673),
    row(16, 40, 0.0598),
    row(17, 36, 0.0538),
    row(18, 32, 0.0478),
    row(19, 28, 0.0418),
    row(20, 24, 0.0359),
    row(21, 22, 0.0329),
    row(22, 20, 0.0299),
    row(23, 18, 0.0269),
    row(24, 16, 0.0239),
    row(25, 14, 0.0209),
    row(26, 12, 0.0179),
    row(27, 11, 0.0164),
    row(28, 10, 0.0149),
    row(29, 9, 0.0135),
    row(30, 8, 0.012),
  ],
};

/** Stainless sheet goes by the older United States Standard Gauge: weight / 40 lb/ft² per inch. */
export const stainlessGauges: GaugeTable = {
  metal: "stainless",
  source: cite("sheet-gauge-united-states", "memory", {
    clause: "15 U.S.C. 206",
    note: "used for stainless sheet by common practice; thickness is weight over 40 lb/ft² per inch",
  }),
  gauges: [
    row(7, 120, 0.1875),
    row(8, 110, 0.1719),
    row(9, 100, 0.1563),
    row(10, 90, 0.1406),
    row(11, 80, 0.125),
    row(12, 70, 0.1094),
    row(13, 60, 0.0938),
    row(14, 50, 0.0781),
    row(15, 45, 0.0703),
    row(16, 40, 0.0625),
    row(17, 36, 0.0563),
    row(18, 32, 0.05),
    row(19, 28, 0.0438),
    row(20, 24, 0.0375),
    row(21, 22, 0.0344),
    row(22, 20, 0.0313),
    row(23, 18, 0.0281),
    row(24, 16, 0.025),
    row(25, 14, 0.0219),
    row(26, 12, 0.0188),
    row(27, 11, 0.0172),
    row(28, 10, 0.0156),
    row(29, 9, 0.0141),
    row(30, 8, 0.0125),
  ],
};
