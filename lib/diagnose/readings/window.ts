import { fieldLabel, type SetupFact, type SetupField } from "@/lib/setup";
import type { CauseId } from "../cause-ids";
import { oddsFromBand, type BandLike } from "../odds-from-band";
import type { Reader, Reading } from "../reading";
import type { Amount, UnitKind } from "../types";

interface Gauge {
  readonly key: string;
  /** What was read, as the subject of a sentence. */
  readonly label: string;
  readonly value: number;
  readonly band: BandLike;
  readonly unitKind: UnitKind;
  readonly high: CauseId | null;
  readonly low: CauseId | null;
  readonly weight?: number;
  /** Least half-width as a share of the value, where the quantity is held closer than others are. */
  readonly least?: number;
  /** Least factor for the side the value is out on. */
  readonly atLeast?: number;
  /** Greatest factor for either side. */
  readonly atMost?: number;
}

export const entered = (quantity: string, valueSi: number, unitKind: UnitKind): Amount => ({
  quantity,
  valueSi,
  unitKind,
  relativeError: null,
});

const whereInBand = (value: number, { low, high }: BandLike): string =>
  value > high ? "is above" : value < low ? "is below" : "lies inside";

/** A number against its starting window. */
export function gaugeReading(gauge: Gauge): readonly Reading[] {
  const { key, label, value, band, unitKind, high, low } = gauge;
  const graded = oddsFromBand(value, band, gauge.weight, gauge.least);
  const { atLeast = 0, atMost = Infinity } = gauge;
  const factors = {
    high: Math.min(atMost, value > band.high ? Math.max(atLeast, graded.high) : graded.high),
    low: Math.min(atMost, value < band.low ? Math.max(atLeast, graded.low) : graded.low),
  };
  return [
    {
      key,
      forText: {
        ...(high && { [high]: `${label} is above the starting window.` }),
        ...(low && { [low]: `${label} is below the starting window.` }),
      },
      againstText: `${label} ${whereInBand(value, band)} the starting window.`,
      odds: { ...(high && { [high]: factors.high }), ...(low && { [low]: factors.low }) },
      amounts: [
        entered(label.toLowerCase(), value, unitKind),
        { ...entered("window", band.low, unitKind), toSi: band.high },
      ],
      source: band.source,
    },
  ];
}

/**
 * What lib/setup judges to be a fault lies outside what every document allows, past what a dial can be read to: it speaks at
 * least this strongly, however little it is out. Own estimate.
 */
export const JUDGED_OUT = 5;

/** And what lies inside what the documents allow speaks against both sides at least this much. Own estimate. */
export const JUDGED_IN = 0.6;

interface Dial {
  readonly unitKind: UnitKind;
  readonly high: CauseId | null;
  readonly low: CauseId | null;
}

const dials: Partial<Readonly<Record<SetupField, Dial>>> = {
  ctwdMm: { unitKind: "small-length", high: "ctwd-long", low: "ctwd-short" },
  volts: { unitKind: "voltage", high: "volt-high", low: "volt-low" },
  wireFeedMPerMin: { unitKind: "wire-feed", high: "wfs-high", low: "wfs-low" },
  amps: { unitKind: "current", high: "wfs-high", low: "wfs-low" },
  gasFlowLPerMin: { unitKind: "gas-flow", high: "gas-high", low: "gas-low" },
  travelAngleDeg: { unitKind: "angle", high: "drag-excess", low: null },
};

/** Volts against their feed are read and held to about a twentieth. Own estimate. */
const VOLTS_HELD_TO = 0.05;

const forFeed = ({ code }: SetupFact): boolean =>
  code === "reading-low-for-feed" || code === "reading-high-for-feed";
const against = ({ code }: SetupFact): boolean =>
  code === "reading-below-window" || code === "reading-above-window" || code === "reading-beyond-data-sheet";

/**
 * Tip to work, volts, feed, amps, gas flow and gun angle, each against the bounds by which lib/setup judged it, weighed by
 * how far in or out it lies. Where volts were judged with their feed, the pair decides, and the volts alone say nothing.
 */
export const windowReadings: Reader = ({ setup, facts }) => {
  const paired = facts.some(forFeed);
  return facts.flatMap((fact): readonly Reading[] => {
    if (!forFeed(fact) && !(against(fact) && !(paired && fact.data["field"] === "volts"))) return [];
    if (fact.code === "reading-beyond-data-sheet") return [];
    const field = fact.data["field"] as SetupField;
    const dial = dials[field];
    if (dial === undefined) return [];
    const pushed = field === "travelAngleDeg" && setup.travelDirection === "push";
    const pair = forFeed(fact);
    const value = Number(fact.data["value"]);
    const band = { low: Number(fact.data["low"]), high: Number(fact.data["high"]), source: fact.source };
    return gaugeReading({
      key: pair ? "volts-for-feed" : field,
      label: pair ? "Voltage for this feed" : labelOf(field, pushed),
      value,
      band,
      ...dial,
      ...(pushed ? { high: "push-excess" as const } : {}),
      ...(pair ? { least: VOLTS_HELD_TO } : {}),
      ...(fact.state === "fault" ? { atLeast: JUDGED_OUT } : {}),
      ...(fact.state === "in-order" && pair ? { atMost: JUDGED_IN } : {}),
      // With the feed known, current says little more: it follows from feed and tip to work.
      weight: field === "amps" && setup.wireFeedMPerMin !== null ? 0.3 : 1,
    });
  });
};

function labelOf(field: SetupField, pushed: boolean): string {
  return field === "travelAngleDeg" && !pushed ? "Drag angle" : fieldLabel(field);
}
