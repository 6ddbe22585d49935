import { L_PER_MIN_PER_CFH, M_PER_MIN_PER_IPM, MM_PER_INCH, type Source } from "@/lib/base";
import type { ElectrodeClass, ElectrodePosition } from "./electrode-class";
import type { Gas, Transfer } from "./names";
import { LEAST_SHARE_OF_LINE, positionFactors, type PositionFactor } from "./tables/position-factors";
import { windowRows, type Span, type WindowRow } from "./tables/window-rows";
import { together } from "./together";
import { isInchSize } from "./wire-size";

export const windowQuantities = [
  "wireFeedMPerMin",
  "volts",
  "amps",
  "ctwdMm",
  "travelAngleDeg",
  "gasFlowLPerMin",
] as const;
export type WindowQuantity = (typeof windowQuantities)[number];

export interface WindowQuery {
  readonly electrode: ElectrodeClass;
  readonly diameterMm: number;
  /** null: not known; lines for every gas the class may run are taken together. */
  readonly gas: Gas | null;
  readonly transfer: Transfer | null;
  /** The positions the bead may have been run in; lines for all of them are taken together. */
  readonly positions: readonly ElectrodePosition[];
}

type Spans = Readonly<Record<WindowQuantity, Span | null>>;

/** One printed row at one position, in SI: as printed, or the lower part of it that is left out of position. */
export interface PlacedRow {
  readonly position: ElectrodePosition;
  readonly spans: Spans;
  /** Volts of the whole printed row, whatever is left of it here: how far apart its ends lie. */
  readonly voltsOfRow: Span | null;
  /** Whether low amps belong to low feed and high amps to high feed. */
  readonly paired: boolean;
  /** Its low end is cut down from the flat line by a rule of position. */
  readonly derived: boolean;
  readonly source: Source;
}

/**
 * The rows that give a quantity at a position: those printed for it where there are any, else the general ones. Several
 * quantities are asked of what is looked up once.
 */
export function rowsAt(
  query: WindowQuery,
  position: ElectrodePosition,
): (quantity: WindowQuantity) => readonly PlacedRow[] {
  const rows = rowsFor(query);
  const own = rows.filter((row) => row.positions?.includes(position));
  const general = rows.filter((row) => row.positions === undefined);
  const made = new Map<WindowRow, PlacedRow>();
  const placedOnce = (row: WindowRow): PlacedRow => {
    const there = made.get(row) ?? placed(row, position, query);
    made.set(row, there);
    return there;
  };
  return (quantity) => {
    const gives = (row: WindowRow): boolean => printed(row)[quantity] !== null;
    const ownGiving = own.filter(gives);
    const besides = ownGiving.some((row) => !row.beside) ? [] : general.filter(gives);
    return [...besides, ...ownGiving].map(placedOnce);
  };
}

export const placedRows = (
  query: WindowQuery,
  position: ElectrodePosition,
  quantity: WindowQuantity,
): readonly PlacedRow[] => rowsAt(query, position)(quantity);

function rowsFor({ electrode, diameterMm, gas, transfer }: WindowQuery): readonly WindowRow[] {
  const group =
    electrode.process === "SMAW"
      ? byClass.covered
      : electrode.process === "GTAW"
        ? byClass.rod
        : byClass.wire;
  // A gas the class does not run is a fault of its own; the window stays the class's, or not knowing would say more.
  const gases = gas !== null && electrode.gases.includes(gas) ? [gas] : electrode.gases;
  return (group.get(electrode.id) ?? []).filter(
    (row) =>
      sizeMatches(row.diametersIn, diameterMm) &&
      (row.gases === undefined || row.gases.some((g) => gases.includes(g))) &&
      (row.transfer === undefined || transfer === null || row.transfer === transfer),
  );
}

function sizeMatches(diametersIn: readonly number[], diameterMm: number): boolean {
  return diametersIn.length === 0 || diametersIn.some((inches) => isInchSize(inches, diameterMm));
}

function placed(row: WindowRow, position: ElectrodePosition, query: WindowQuery): PlacedRow {
  const factor =
    row.positions === undefined ? positionFactors.find((one) => holds(one, row, position, query)) : undefined;
  const left = factor === undefined ? 1 : partLeft(row, factor.share);
  return {
    position,
    // The whole row keeps its printed ends to the last digit.
    spans: left === 1 ? printed(row) : bySpan((quantity) => cut(printed(row)[quantity], quantity, left)),
    voltsOfRow: row.volts ?? null,
    paired: row.wireFeedIpm !== undefined && row.amps !== undefined && !row.ampsUnpaired,
    derived: left < 1,
    source: factor === undefined || left === 1 ? row.source : together([row.source, factor.source]),
  };
}

/** How much of the row's span is left from its low end when its highest feed (or current) is cut to a share. */
function partLeft(row: WindowRow, share: number): number {
  const [low, high] = row.wireFeedIpm ?? row.amps ?? [0, 0];
  if (high <= low) return 1;
  return Math.min(1, Math.max(LEAST_SHARE_OF_LINE, (share * high - low) / (high - low)));
}

/** What goes with the feed goes down with it along the row's own line; the rest is as printed. */
function cut(span: Span | null, quantity: WindowQuantity, left: number): Span | null {
  if (span === null || !["wireFeedMPerMin", "amps", "volts"].includes(quantity)) return span;
  return [span[0], span[0] + left * (span[1] - span[0])];
}

function holds(
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
    (factor.holdsFor === "own-settings") === (row.ownPositionSettings ?? false)
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

const bySpan = (spanOf: (quantity: WindowQuantity) => Span | null): Spans =>
  Object.fromEntries(windowQuantities.map((quantity) => [quantity, spanOf(quantity)])) as Record<
    WindowQuantity,
    Span | null
  >;

function inSi(row: WindowRow): Spans {
  const spans: Readonly<Record<WindowQuantity, Span | undefined>> = {
    wireFeedMPerMin: row.wireFeedIpm,
    volts: row.volts,
    amps: row.amps,
    ctwdMm: row.ctwdIn,
    travelAngleDeg: row.travelAngleDeg,
    gasFlowLPerMin: row.gasFlowCfh,
  };
  return bySpan((quantity) => {
    const span = spans[quantity];
    const factor = perPrintedUnit[quantity];
    return span === undefined ? null : [span[0] * factor, span[1] * factor];
  });
}

function rowsByClass(rows: readonly WindowRow[]): ReadonlyMap<string, readonly WindowRow[]> {
  const found = new Map<string, WindowRow[]>();
  for (const row of rows)
    for (const id of new Set(row.classes)) found.set(id, [...(found.get(id) ?? []), row]);
  return found;
}

// The tables are constants, and every plan and diagnosis asks them many times: rows are laid by class, and put in SI, once.
const byClass = {
  wire: rowsByClass(windowRows.wire),
  covered: rowsByClass(windowRows.covered),
  rod: rowsByClass(windowRows.rod),
} as const;
const printedInSi: ReadonlyMap<WindowRow, Spans> = new Map(
  Object.values(windowRows).flatMap((rows) => rows.map((row) => [row, inSi(row)] as const)),
);
const printed = (row: WindowRow): Spans => printedInSi.get(row)!;
