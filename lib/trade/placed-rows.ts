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

/** One printed row at one position, in SI: as printed, or the lower part of it that is left out of position. */
export interface PlacedRow {
  readonly position: ElectrodePosition;
  readonly spans: Readonly<Record<WindowQuantity, Span | null>>;
  /** Volts of the whole printed row, whatever is left of it here: how far apart its ends lie. */
  readonly voltsOfRow: Span | null;
  /** Whether low amps belong to low feed and high amps to high feed. */
  readonly paired: boolean;
  /** Its low end is cut down from the flat line by a rule of position. */
  readonly derived: boolean;
  readonly source: Source;
}

/** The rows that give a quantity at a position: those printed for it where there are any, else the general ones. */
export function placedRows(
  query: WindowQuery,
  position: ElectrodePosition,
  quantity: WindowQuantity,
): readonly PlacedRow[] {
  const giving = rowsFor(query).filter((row) => printed(row, quantity) !== null);
  const own = giving.filter((row) => row.positions?.includes(position));
  const general = own.some((row) => !row.beside) ? [] : giving.filter((row) => row.positions === undefined);
  return [...general, ...own].map((row) => placed(row, position, query));
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
  return diametersIn.length === 0 || diametersIn.some((inches) => isInchSize(inches, diameterMm));
}

function placed(row: WindowRow, position: ElectrodePosition, query: WindowQuery): PlacedRow {
  const factor =
    row.positions === undefined ? positionFactors.find((one) => holds(one, row, position, query)) : undefined;
  const left = factor === undefined ? 1 : partLeft(row, factor.share);
  const spans = Object.fromEntries(
    windowQuantities.map((quantity) => [quantity, cut(printed(row, quantity), quantity, left)]),
  ) as Record<WindowQuantity, Span | null>;
  return {
    position,
    spans,
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
  // The whole row keeps its printed end to the last digit.
  return left === 1 ? span : [span[0], span[0] + left * (span[1] - span[0])];
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

function printed(row: WindowRow, quantity: WindowQuantity): Span | null {
  const spans: Readonly<Record<WindowQuantity, Span | undefined>> = {
    wireFeedMPerMin: row.wireFeedIpm,
    volts: row.volts,
    amps: row.amps,
    ctwdMm: row.ctwdIn,
    travelAngleDeg: row.travelAngleDeg,
    gasFlowLPerMin: row.gasFlowCfh,
  };
  const span = spans[quantity];
  const factor = perPrintedUnit[quantity];
  return span === undefined ? null : [span[0] * factor, span[1] * factor];
}
