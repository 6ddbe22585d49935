import type { Source } from "@/lib/base";
import { cite, fromMemory, type WindowQuantity } from "@/lib/trade";
import type { RunSetup } from "./run-setup";

interface UsualBand {
  readonly low: number;
  readonly high: number;
  readonly source: Source;
}
type Usual = Partial<Readonly<Record<WindowQuantity, UsualBand>>>;

const band = (low: number, high: number, source = fromMemory): UsualBand => ({ low, high, source });
const notes = cite("apprenticeship-notes", "seen");
const textbook = cite("modern-welding", "seen-part");
const shortArc = cite("trade-reference-notes", "seen");
const spray = cite("solid-wire-data-card", "seen");

/** Flow in L/min: 25 to 45 ft³/h for solid wire, 35 to 50 for cored, 15 to 25 for tungsten. */
const byProcess: Readonly<Record<string, Usual>> = {
  GMAW: {
    gasFlowLPerMin: band(12, 21, notes),
    ctwdMm: band(9, 25, notes),
    travelAngleDeg: band(0, 15, notes),
  },
  "FCAW-G": {
    gasFlowLPerMin: band(16.5, 23.6, notes),
    ctwdMm: band(16, 25, notes),
    travelAngleDeg: band(5, 25, textbook),
    volts: band(22, 32, textbook),
  },
  "FCAW-S": { travelAngleDeg: band(5, 30) },
  GTAW: { gasFlowLPerMin: band(7, 12, notes) },
};

const byTransfer: Readonly<Record<string, Usual>> = {
  "short-circuit": { volts: band(15, 22, shortArc), ctwdMm: band(6, 16, shortArc) },
  spray: { volts: band(24, 30, spray), ctwdMm: band(12, 25, spray) },
};

/** A rod carries about one ampere for a thousandth of an inch of its core; the classes spread around that. */
const AMPS_PER_MM = 1 / 0.0254;

/** For the seal over the tables. */
export const usualWindows = { byProcess, byTransfer, AMPS_PER_MM } as const;

/**
 * What is usual for a process (and a transfer, or a rod's size) when the class on the spool is not known. Wide bands:
 * they only speak when a reading is far out.
 */
export function usualWindow(setup: RunSetup): Usual {
  const { process, transfer, electrodeDiameterMm: core } = setup;
  return {
    ...byProcess[process ?? ""],
    ...(process === "GMAW" ? byTransfer[transfer ?? ""] : {}),
    ...(process === "SMAW" && core !== null
      ? { amps: band(0.6 * core * AMPS_PER_MM, 1.3 * core * AMPS_PER_MM) }
      : {}),
  };
}
