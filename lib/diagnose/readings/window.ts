import { interpolate } from "@/lib/numeric";
import { fieldLabel } from "@/lib/setup";
import { ownEstimate, windowQuantities } from "@/lib/trade";
import { oddsFromBand, type BandLike } from "../odds-from-band";
import { usualWindow } from "../usual-windows";
import type { Reader, Reading, ReadingContext } from "../reading";
import type { CauseId } from "../cause-ids";
import type { Amount, UnitKind } from "../types";

interface Gauge {
  readonly key: string;
  /** What was read, as the subject of a sentence. */
  readonly label: string;
  readonly value: number | null;
  readonly band: BandLike | null;
  readonly unitKind: UnitKind;
  readonly high: CauseId | null;
  readonly low: CauseId | null;
  readonly weight?: number;
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
  if (value === null || band === null) return [];
  const factors = oddsFromBand(value, band, gauge.weight);
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
        entered("window from", band.low, unitKind),
        entered("window to", band.high, unitKind),
      ],
      source: band.source,
    },
  ];
}

/**
 * Tip to work, volts, feed, amps and gas flow against the window of class, size and position; where the class gives none,
 * against what is usual for the process.
 */
export const windowReadings: Reader = ({ setup, window: own }) => {
  const usual = usualWindow(setup);
  const window = Object.fromEntries(windowQuantities.map((q) => [q, own?.[q] ?? usual[q] ?? null]));
  const drag = setup.travelDirection !== "push" && setup.process !== "GMAW";
  return [
    {
      key: "ctwdMm",
      label: fieldLabel("ctwdMm"),
      value: setup.ctwdMm,
      band: window.ctwdMm ?? null,
      unitKind: "small-length",
      high: "ctwd-long",
      low: "ctwd-short",
    },
    {
      key: "volts",
      label: fieldLabel("volts"),
      value: setup.volts,
      band: window.volts ?? null,
      unitKind: "voltage",
      high: "volt-high",
      low: "volt-low",
    },
    {
      key: "wireFeedMPerMin",
      label: fieldLabel("wireFeedMPerMin"),
      value: setup.wireFeedMPerMin,
      band: window.wireFeedMPerMin ?? null,
      unitKind: "wire-feed",
      high: "wfs-high",
      low: "wfs-low",
    },
    // With the feed known, current says little more: it follows from feed and tip to work.
    {
      key: "amps",
      label: fieldLabel("amps"),
      value: setup.amps,
      band: window.amps ?? null,
      unitKind: "current",
      high: "wfs-high",
      low: "wfs-low",
      weight: setup.wireFeedMPerMin === null ? 1 : 0.3,
    },
    {
      key: "gasFlowLPerMin",
      label: fieldLabel("gasFlowLPerMin"),
      value: setup.gasFlowLPerMin,
      band: window.gasFlowLPerMin ?? null,
      unitKind: "gas-flow",
      high: "gas-high",
      low: "gas-low",
    },
    {
      key: "travelAngleDeg",
      label: drag ? "Drag angle" : fieldLabel("travelAngleDeg"),
      value: setup.travelAngleDeg,
      band: window.travelAngleDeg ?? null,
      unitKind: "angle",
      high: setup.travelDirection === "push" ? "push-excess" : "drag-excess",
      low: null,
    },
  ].flatMap((gauge) => gaugeReading(gauge as Gauge));
};

/**
 * Volts that belong to this feed: straight across the window, from its low corner to its high corner. null where the
 * window does not give both. The corners belonging together is our reading of the tables.
 */
export function voltsForFeed({ window }: Pick<ReadingContext, "window">, feedMPerMin: number): number | null {
  const feed = window?.wireFeedMPerMin ?? null;
  const volts = window?.volts ?? null;
  if (feed === null || volts === null || feed.high <= feed.low) return null;
  return interpolate(
    [
      [feed.low, volts.low],
      [feed.high, volts.high],
    ],
    feedMPerMin,
  );
}

/** Volts against feed: both may lie inside their windows and still not suit each other. */
export const balanceReading: Reader = (context) => {
  const { setup, window } = context;
  if (setup.volts === null || setup.wireFeedMPerMin === null || (window?.volts ?? null) === null) return [];
  const wanted = voltsForFeed(context, setup.wireFeedMPerMin);
  if (wanted === null) return [];
  // Two volts either way is what the printed corners differ by between documents.
  const band = { low: wanted - 2, high: wanted + 2, source: ownEstimate };
  return gaugeReading({
    key: "volts-for-feed",
    label: "Voltage for this feed",
    value: setup.volts,
    band,
    unitKind: "voltage",
    high: "volt-high",
    low: "volt-low",
  });
};
