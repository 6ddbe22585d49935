import {
  type Band,
  commonPractice,
  electrodePositions,
  isPublished,
  parameterWindow,
  voltsAtFeed,
  windowQuantities,
  type WindowQuantity,
} from "@/lib/trade";
import { usualWindow } from "./usual-windows";
import { finding, inOrder, unusual, type SetupFact, type SetupRule } from "./finding";
import type { RunSetup } from "./run-setup";
import { dragOnSlag } from "./sources";
import { timedTravelSpeed } from "./travel-speed";
import { electrodeOf, electrodesMeant, windowFor, windowQueryFor } from "./window-for";

/**
 * How closely a shop reads each quantity: a reading this little past the end of a window is still inside it.
 * Own estimate; in the quantity's unit.
 */
export const readingResolution: Readonly<Record<WindowQuantity, number>> = {
  wireFeedMPerMin: 0.1,
  volts: 0.25,
  amps: 3,
  ctwdMm: 1,
  travelAngleDeg: 2,
  gasFlowLPerMin: 0.5,
};

/**
 * Where the class gives no window, a reading against what is usual for the process: evidence, never a finding, for the
 * bands are wide and the wire may be made for something else.
 */
export const readingsAgainstUsual: SetupRule = (setup) => {
  const own = windowFor(setup);
  const usual = usualWindow(setup);
  return windowQuantities.flatMap((quantity) => {
    const value = setup[quantity];
    const band = usual[quantity];
    if (value === null || band === undefined || (own?.[quantity] ?? null) !== null) return [];
    const data = { field: quantity, value, low: band.low, high: band.high };
    const past = outside(quantity, value, band);
    const code = past === null ? "reading-above-window" : (`reading-${past.side}-window` as const);
    return [(past === null ? inOrder : unusual)(code, [quantity, "process"], { data, source: band.source })];
  });
};

/** Every recorded reading against the window of its class: outside, or inside only by the trade's own figures. */
export const readingsAgainstWindow: SetupRule = (setup) => {
  const window = windowFor(setup);
  if (window === null) return [];
  return windowQuantities.flatMap((quantity) => {
    const value = setup[quantity];
    const band = window[quantity];
    if (value === null || band === null || !comparable(quantity, setup)) return [];
    return judge(quantity, value, band, setup);
  });
};

/**
 * Solid wire has a window for each transfer, and not for every transfer: without it nothing can be held against it.
 * An angle says nothing until it is known to be the drag or the push the window speaks of.
 * Gas flow zero is a missing gas, said elsewhere.
 */
function comparable(quantity: WindowQuantity, setup: RunSetup): boolean {
  if (quantity === "travelAngleDeg") {
    const usual = electrodeOf(setup)?.process === "GMAW" ? "push" : "drag";
    return setup.travelDirection === usual;
  }
  if (quantity === "gasFlowLPerMin" && setup.gasFlowLPerMin === 0) return false;
  return electrodeOf(setup)?.process !== "GMAW" || setup.transfer !== null;
}

function judge(quantity: WindowQuantity, value: number, band: Band, setup: RunSetup): readonly SetupFact[] {
  const fields = [quantity, "electrodeClass", "electrodeDiameterMm"] as const;
  const past = outside(quantity, value, band);
  if (past !== null) return [finding(`reading-${past.side}-window`, "warn", [...fields], past)];
  const slack = readingResolution[quantity];
  const holding = band.parts.filter((part) => value >= part.low - slack && value <= part.high + slack);
  const practiceOnly = holding.every(({ source: { confidence } }) =>
    ["common-practice", "own-estimate"].includes(confidence),
  );
  const inside = inOrder("reading-above-window", [...fields], {
    data: { field: quantity, value, low: band.low, high: band.high },
    source: band.source,
  });
  const printed = practiceOnly && leads(quantity, setup) ? printedEnds(quantity, setup) : null;
  if (printed === null || (value >= printed.low - slack && value <= printed.high + slack)) return [inside];
  const data = { field: quantity, value, low: printed.low, high: printed.high };
  return [
    inside,
    finding("reading-beyond-data-sheet", "note", [...fields], { data, source: commonPractice }),
  ];
}

/** Feed leads and the rest follows it; without a feed the current leads. One note for a set-up, not one for each dial. */
const leads = (quantity: WindowQuantity, setup: RunSetup): boolean =>
  quantity === (electrodeOf(setup)?.process === "SMAW" ? "amps" : "wireFeedMPerMin");

/** On which side of a span a reading lies, and by how much; null inside, or no further out than it can be read. */
function outside(
  quantity: WindowQuantity,
  value: number,
  { low, high, source }: Pick<Band, "low" | "high" | "source">,
) {
  const slack = readingResolution[quantity];
  const side = value < low - slack ? "below" : value > high + slack ? "above" : null;
  if (side === null) return null;
  const data = { field: quantity, value, low, high, by: side === "below" ? low - value : value - high };
  return { side, data, source } as const;
}

/**
 * Volts against the feed they are run with: both may lie inside the window and still not go together. Each row speaks by
 * its own line; what no row allows at this feed is out.
 */
export const voltsAgainstFeed: SetupRule = (setup) => {
  const { volts, wireFeedMPerMin } = setup;
  const query = windowQueryFor(setup);
  if (query === null || volts === null || wireFeedMPerMin === null || !comparable("volts", setup)) return [];
  const all = windowFor(setup)?.volts ?? null;
  const atFeed = voltsAtFeed(query, wireFeedMPerMin, readingResolution.wireFeedMPerMin);
  // Outside every row's volts is said by the window itself.
  if (all === null || atFeed === null || outside("volts", volts, all) !== null) return [];
  const past = outside("volts", volts, atFeed);
  if (past === null) {
    const { low, high, source, covered } = atFeed;
    const said = { data: { field: "volts", value: volts, low, high }, source };
    return covered ? [inOrder("reading-high-for-feed", ["volts", "wireFeedMPerMin"], said)] : [];
  }
  const code = past.side === "below" ? "reading-low-for-feed" : "reading-high-for-feed";
  return [finding(code, "warn", ["volts", "wireFeedMPerMin", "electrodeClass", "electrodeDiameterMm"], past)];
};

/**
 * The outer ends of what is printed for this wire in any gas and position. Taken over all of them on purpose: whether a
 * document exists must not depend on what the person happens not to know.
 */
function printedEnds(quantity: WindowQuantity, setup: RunSetup): { low: number; high: number } | null {
  const electrode = electrodeOf(setup);
  if (electrode === null || setup.electrodeDiameterMm === null) return null;
  const everywhere = parameterWindow({
    electrode,
    diameterMm: setup.electrodeDiameterMm,
    gas: null,
    transfer: null,
    positions: electrodePositions,
  });
  const parts = (everywhere?.[quantity]?.parts ?? []).filter((part) => isPublished(part.source));
  if (parts.length === 0) return null;
  return {
    low: Math.min(...parts.map((part) => part.low)),
    high: Math.max(...parts.map((part) => part.high)),
  };
}

/** Pushing lets the slag run under the arc. Uphill some wires are pointed a little ahead, so there it is a note. */
export const pushOnSlag: SetupRule = (setup) => {
  const rows = electrodesMeant(setup);
  const slag = (process: string | null) => process === "FCAW-S" || process === "FCAW-G" || process === "SMAW";
  if (setup.travelDirection === null || setup.travelDirection === "square") return [];
  if (!slag(setup.process) && !(rows.length > 0 && rows.every((row) => slag(row.process)))) return [];
  const level = setup.position !== null && setup.position !== "vertical";
  const downhill = setup.position === "vertical" && setup.progression === "down";
  const severity = level || downhill ? "warn" : "note";
  const said = { data: { process: setup.process ?? rows[0]?.process ?? "" }, source: dragOnSlag };
  return setup.travelDirection === "drag"
    ? [inOrder("push-on-slag", ["travelDirection", "process"], said)]
    : [finding("push-on-slag", severity, ["travelDirection", "process"], said)];
};

/** A stop-watch and a tape agree this well over a hand-run bead. Own estimate. */
export const TRAVEL_AGREEMENT = 0.1;

export const travelSpeedDisagrees: SetupRule = (setup) => {
  const timed = timedTravelSpeed(setup);
  const recorded = setup.travelSpeedMmPerMin;
  if (timed === null || recorded === null) return [];
  if (Math.abs(timed - recorded) <= TRAVEL_AGREEMENT * Math.max(timed, recorded)) return [];
  const data = { value: recorded, timed };
  return [
    finding("travel-speed-disagrees", "warn", ["travelSpeedMmPerMin", "weldLengthMm", "arcTimeS"], {
      data,
      source: commonPractice,
    }),
  ];
};
