import type { Change, UnitKind } from "@/lib/diagnose";
import type { RunSetup } from "@/lib/setup";
import { gases, polarities, progressions, travelDirections } from "@/lib/trade";

const byUnit: Partial<Record<UnitKind, keyof RunSetup>> = {
  "wire-feed": "wireFeedMPerMin",
  voltage: "volts",
  current: "amps",
  "gas-flow": "gasFlowLPerMin",
  "travel-speed": "travelSpeedMmPerMin",
};

/** A length or an angle can be of several things, so for these the cause says which. */
const byCause: Readonly<Record<string, keyof RunSetup>> = {
  "ctwd-long": "ctwdMm",
  "ctwd-short": "ctwdMm",
  "ctwd-uneven": "ctwdMm",
  gap: "fitUpGapMm",
  "drag-excess": "travelAngleDeg",
  "push-excess": "travelAngleDeg",
  "work-angle": "workAngleDeg",
};

/**
 * The set-up of the next bead: this one's with the proposed change in it. What belongs to the bead just run (its
 * length, its arc time) is forgotten; a change that is no set-up field ("grind the plate") leaves the set-up alone.
 */
export function applyChange(setup: RunSetup, change: Change): RunSetup {
  const fresh: RunSetup = { ...setup, weldLengthMm: null, arcTimeS: null };
  if (change.toText !== null) return { ...fresh, ...wordChange(change.toText) };
  const field = byCause[change.causeId] ?? (change.unitKind && byUnit[change.unitKind]);
  if (change.toSi === null || !field) return fresh;
  return { ...fresh, [field]: change.toSi };
}

/** Polarity, gas, direction and progression are changes between words of closed lists. */
function wordChange(word: string): Partial<RunSetup> {
  const polarity = polarities.find((one) => one === word);
  const gas = gases.find((one) => one === word);
  const travelDirection = travelDirections.find((one) => one === word);
  const progression = progressions.find((one) => one === word);
  return {
    ...(polarity && { polarity }),
    ...(gas && { gas }),
    ...(travelDirection && { travelDirection }),
    ...(progression && { progression }),
  };
}
