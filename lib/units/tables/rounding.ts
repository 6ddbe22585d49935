import { L_PER_CUBIC_FOOT, L_PER_MIN_PER_CFH, M_PER_MIN_PER_IPM, MM_PER_FOOT, MM_PER_INCH } from "./factors";

/** How a quantity is printed in one system of units. */
export interface Printed {
  /** As it stands after the number, its space included. */
  readonly suffix: string;
  /** Stored units in one printed unit. */
  readonly per: number;
  /** Decimals where nothing is said of the uncertainty. */
  readonly places: number;
  /** Decimals that are nought are printed too: 0.30 %. */
  readonly keepsNoughts?: boolean;
  /** Added after dividing: 32 for °F. */
  readonly plus?: number;
}

export interface RoundingRow {
  /** The unit in which values are stored and worked with. */
  readonly stored: string;
  readonly metric: Printed;
  readonly inch: Printed;
}

const same = (stored: string, suffix: string, places: number, per = 1): RoundingRow => ({
  stored,
  metric: { suffix, per, places },
  inch: { suffix, per, places },
});

const withNoughts = (stored: string, suffix: string, places: number): RoundingRow => {
  const printed = { suffix, per: 1, places, keepsNoughts: true };
  return { stored, metric: printed, inch: printed };
};

/** Exactly, by the international pound. */
const KG_PER_POUND = 0.45359237;

/**
 * One row for each quantity that a person reads: its unit in either system and to how many decimals. Nothing else in the
 * product decides decimals for a person. Places are those of the shop's own instruments: a rule's half millimetre is
 * read between its lines, a machine's display gives 0.1 V and whole amperes (*common practice, no source*).
 */
export const rounding = {
  length: {
    stored: "mm",
    metric: { suffix: " mm", per: 1, places: 2 },
    inch: { suffix: " in", per: MM_PER_INCH, places: 3 },
  },
  /** What is too small for a rule. */
  thousandths: {
    stored: "mm",
    metric: { suffix: " mm", per: 1, places: 3 },
    inch: { suffix: " thousandths of an inch", per: MM_PER_INCH / 1000, places: 1 },
  },
  /** A length that was worked out of a model and is known to a tenth at best. */
  modelLength: {
    stored: "mm",
    metric: { suffix: " mm", per: 1, places: 1 },
    inch: { suffix: " in", per: MM_PER_INCH, places: 2 },
  },
  area: {
    stored: "mm²",
    metric: { suffix: " mm²", per: 1, places: 1 },
    inch: { suffix: " in²", per: MM_PER_INCH ** 2, places: 3 },
  },
  wireFeed: {
    stored: "m/min",
    metric: { suffix: " m/min", per: 1, places: 2 },
    inch: { suffix: " in/min", per: M_PER_MIN_PER_IPM, places: 0 },
  },
  travelSpeed: {
    stored: "mm/min",
    metric: { suffix: " mm/min", per: 1, places: 0 },
    inch: { suffix: " in/min", per: MM_PER_INCH, places: 1 },
  },
  gasFlow: {
    stored: "L/min",
    metric: { suffix: " L/min", per: 1, places: 1 },
    inch: { suffix: " cfh", per: L_PER_MIN_PER_CFH, places: 0 },
  },
  heatInput: {
    stored: "kJ/mm",
    metric: { suffix: " kJ/mm", per: 1, places: 2 },
    inch: { suffix: " kJ/in", per: 1 / MM_PER_INCH, places: 1 },
  },
  temperature: {
    stored: "°C",
    metric: { suffix: " °C", per: 1, places: 0 },
    inch: { suffix: " °F", per: 5 / 9, places: 0, plus: 32 },
  },
  depositionRate: {
    stored: "kg/h",
    metric: { suffix: " kg/h", per: 1, places: 1 },
    inch: { suffix: " lb/h", per: KG_PER_POUND, places: 1 },
  },
  mass: {
    stored: "kg",
    metric: { suffix: " kg", per: 1, places: 2 },
    inch: { suffix: " lb", per: KG_PER_POUND, places: 2 },
  },
  wireRun: {
    stored: "m",
    metric: { suffix: " m", per: 1, places: 0 },
    inch: { suffix: " ft", per: MM_PER_FOOT / 1000, places: 0 },
  },
  gasVolume: {
    stored: "L",
    metric: { suffix: " L", per: 1, places: 0 },
    inch: { suffix: " ft³", per: L_PER_CUBIC_FOOT, places: 1 },
  },
  voltage: same("V", " V", 1),
  current: same("A", " A", 0),
  power: same("kW", " kW", 1),
  angle: same("°", "°", 0),
  /** An angle or a share that was measured, where its uncertainty says nothing. */
  measuredAngle: same("°", "°", 1),
  share: same("ratio", " %", 1, 0.01),
  wholeShare: same("ratio", " %", 0, 0.01),
  /** Of a hundred, the sign of percent left out. */
  wholePoints: same("ratio", "", 0, 0.01),
  /** As somebody typed it. */
  statedShare: same("ratio", " %", 2, 0.01),
  ratio: same("ratio", "", 2),
  carbonEquivalent: withNoughts("%", " %", 2),
  statistic: withNoughts("1", "", 2),
  probability: withNoughts("1", "", 3),
  /** An agreement between people, and its interval. */
  kappa: withNoughts("ratio", "", 2),
  seconds: same("s", " s", 1),
  fileSize: same("bytes", " MB", 1, 2 ** 20),
  minutes: same("min", " min", 1),
  /** From ten minutes on. */
  wholeMinutes: same("min", " min", 0),
  count: same("count", "", 0),
  /** Means and scatter of counts. */
  tenths: same("count", "", 1),
} as const satisfies Readonly<Record<string, RoundingRow>>;

export type PrintedQuantity = keyof typeof rounding;
