import { L_PER_MIN_PER_CFH, M_PER_MIN_PER_IPM, MM_PER_INCH, needsCheck, type Source } from "@/lib/base";
import type { ElectrodeClass, ElectrodePosition } from "./electrode-class";
import type { Gas, Transfer } from "./names";
import { together } from "./together";
import { positionFactors, type PositionFactor } from "./tables/position-factors";
import { windowRows, type Span, type WindowRow } from "./tables/window-rows";

/** One document's figures for one quantity, in the quantity's SI unit. Both ends belong to it. */
export interface Interval {
  readonly low: number;
  readonly high: number;
  readonly source: Source;
}

/**
 * What the documents and the trade together allow. `low` and `high` are the outer ends over `parts`; where documents
 * disagree each stands in `parts` with its own source. `source` names all of them, at the confidence of the weakest.
 */
export interface Band extends Interval {
  readonly parts: readonly Interval[];
}

export const windowQuantities = [
  "wireFeedMPerMin",
  "volts",
  "amps",
  "ctwdMm",
  "travelAngleDeg",
  "gasFlowLPerMin",
] as const;
export type WindowQuantity = (typeof windowQuantities)[number];

/** Starting windows, never limits. null: no document or practice known to us gives it. */
export type ParameterWindow = Readonly<Record<WindowQuantity, Band | null>>;

export interface WindowQuery {
  readonly electrode: ElectrodeClass;
  readonly diameterMm: number;
  /** null: not known; lines for every gas the class may run are taken together. */
  readonly gas: Gas | null;
  readonly transfer: Transfer | null;
  /** The positions the bead may have been run in; lines for all of them are taken together. */
  readonly positions: readonly ElectrodePosition[];
}

/** 1.2 mm is the .045 in wire (1.143 mm), 0.9 the .035, 1.6 the 1/16: nominal sizes round by up to this. */
const DIAMETER_TOLERANCE_MM = 0.085;

/**
 * The window for one electrode, diameter, gas, transfer and set of positions, converted to SI from the printed lines.
 * Returns null when no line holds. Knowing less never narrows a band: every alternative left open is included.
 */
export function parameterWindow(query: WindowQuery): ParameterWindow | null {
  const rows = rowsFor(query);
  const bands = windowQuantities.map((quantity) => {
    const parts = query.positions.flatMap((position) => partsAt(rows, quantity, position, query));
    return [quantity, bandOf(parts)] as const;
  });
  if (bands.every(([, band]) => band === null)) return null;
  return Object.fromEntries(bands) as Record<WindowQuantity, Band | null>;
}

/** True when a text was read for it; false for memory, common practice and our own estimates. */
export function isPublished(source: Source): boolean {
  return !needsCheck(source) || source.confidence === "seen-older" || source.confidence === "seen-part";
}

function rowsFor({ electrode, diameterMm, gas, transfer }: WindowQuery): readonly WindowRow[] {
  const group =
    electrode.process === "SMAW"
      ? windowRows.covered
      : electrode.process === "GTAW"
        ? windowRows.rod
        : windowRows.wire;
  // A gas the class does not run is a fault of its own; the window stays the class's, or not knowing would say more.
  const gases = gas !== null && electrode.gases.includes(gas) ? [gas] : electrode.gases;
  return group.filter(
    (row) =>
      row.classes.includes(electrode.id) &&
      sizeMatches(row.diametersIn, diameterMm) &&
      (row.gases === undefined || row.gases.some((g) => gases.includes(g))) &&
      (row.transfer === undefined || transfer === null || row.transfer === transfer),
  );
}

function sizeMatches(diametersIn: readonly number[], diameterMm: number): boolean {
  if (diametersIn.length === 0) return true;
  return diametersIn.some((d) => Math.abs(d * MM_PER_INCH - diameterMm) <= DIAMETER_TOLERANCE_MM);
}

function partsAt(
  rows: readonly WindowRow[],
  quantity: WindowQuantity,
  position: ElectrodePosition,
  query: WindowQuery,
): readonly Interval[] {
  const giving = rows.filter((row) => printed(row, quantity) !== null);
  const own = giving.filter((row) => row.positions?.includes(position));
  if (own.length > 0) return own.map((row) => interval(row, quantity));
  return giving
    .filter((row) => row.positions === undefined)
    .flatMap((row) => moved(row, quantity, position, query));
}

/** The line as it stands, or, out of position, once for each factor that holds. */
function moved(
  row: WindowRow,
  quantity: WindowQuantity,
  position: ElectrodePosition,
  query: WindowQuery,
): readonly Interval[] {
  const plain = interval(row, quantity);
  if (quantity !== "wireFeedMPerMin" && quantity !== "amps" && quantity !== "volts") return [plain];
  const factors = positionFactors.filter((factor) => factorHolds(factor, row, position, query));
  if (factors.length === 0) return [plain];
  return factors.map((factor) => ({
    low: quantity === "volts" ? plain.low + factor.voltsShift[0] : plain.low * factor.feed[0],
    high: quantity === "volts" ? plain.high + factor.voltsShift[1] : plain.high * factor.feed[1],
    source: together([row.source, factor.source]),
  }));
}

function factorHolds(
  factor: PositionFactor,
  row: WindowRow,
  position: ElectrodePosition,
  { electrode, diameterMm }: WindowQuery,
): boolean {
  return (
    factor.process === electrode.process &&
    factor.positions.includes(position) &&
    (factor.classes?.includes(electrode.id) ?? true) &&
    sizeMatches(factor.diametersIn ?? [], diameterMm) &&
    (factor.transfer === undefined || factor.transfer === row.transfer) &&
    (factor.holdsFor === "any" || isPublished(row.source))
  );
}

const perPrintedUnit: Readonly<Record<WindowQuantity, number>> = {
  wireFeedMPerMin: M_PER_MIN_PER_IPM,
  volts: 1,
  amps: 1,
  ctwdMm: MM_PER_INCH,
  travelAngleDeg: 1,
  gasFlowLPerMin: L_PER_MIN_PER_CFH,
};

function printed(row: WindowRow, quantity: WindowQuantity): Span | null {
  const spans: Readonly<Record<WindowQuantity, Span | undefined>> = {
    wireFeedMPerMin: row.wireFeedIpm,
    volts: row.volts,
    amps: row.amps,
    ctwdMm: row.ctwdIn,
    travelAngleDeg: row.travelAngleDeg,
    gasFlowLPerMin: row.gasFlowCfh,
  };
  return spans[quantity] ?? null;
}

function interval(row: WindowRow, quantity: WindowQuantity): Interval {
  const [low, high] = printed(row, quantity) ?? [NaN, NaN];
  const factor = perPrintedUnit[quantity];
  return { low: low * factor, high: high * factor, source: row.source };
}

function bandOf(parts: readonly Interval[]): Band | null {
  if (parts.length === 0) return null;
  const unique = parts.filter((part, i) => parts.findIndex((other) => sameInterval(part, other)) === i);
  return {
    low: Math.min(...unique.map((part) => part.low)),
    high: Math.max(...unique.map((part) => part.high)),
    source: together(unique.map((part) => part.source)),
    parts: unique,
  };
}

function sameInterval(a: Interval, b: Interval): boolean {
  return a.low === b.low && a.high === b.high && a.source.document === b.source.document;
}
