import { insideOf, onDial, turnedRange } from "@/lib/plan";
import type { RunSetup } from "@/lib/setup";
import { cardFields, type CardField, type CardRange } from "./card";

/** How far a dial may stand off what was run well, as a share of it. Own estimates: a tenth, or what a hand holds. */
const shares: Readonly<Record<CardField, number>> = {
  wireFeedMPerMin: 0.05,
  volts: 0.04,
  amps: 0.1,
  ctwdMm: 0.15,
  travelSpeedMmPerMin: 0.15,
  travelAngleDeg: 0.33,
  workAngleDeg: 0.1,
  gasFlowLPerMin: 0.1,
};

const turned = ["wireFeedMPerMin", "volts", "ctwdMm", "travelSpeedMmPerMin", "travelAngleDeg"] as const;
const isTurned = (field: CardField): field is (typeof turned)[number] =>
  (turned as readonly CardField[]).includes(field);

const rounded = (value: number): number => Number(value.toPrecision(3));

/**
 * Ranges to begin a card with: about what was run, no further than the wire's rows, the mains and the plate let each dial go
 * by itself. `known`: what a trial showed of its knobs, which stands instead. What was not written down has no range.
 */
export function proposeRanges(setup: RunSetup, known: readonly CardRange[] = []): readonly CardRange[] {
  const guarded = insideOf(setup)?.(setup) ?? false;
  return cardFields.flatMap((field) => {
    const value = setup[field];
    if (value === null) return [];
    const shown = known.find((range) => range.field === field);
    const about = shown ?? { low: value * (1 - shares[field]), high: value * (1 + shares[field]) };
    const may = guarded && isTurned(field) ? turnedRange(setup, field) : null;
    const low = Math.min(value, Math.max(about.low, may?.low ?? 0));
    const high = Math.max(value, Math.min(about.high, may?.high ?? Infinity));
    const set = (end: number, inward: "low" | "high"): number => {
      const near = isTurned(field) ? onDial("metric", field, end) : rounded(end);
      const leaves = inward === "low" ? near < low - 1e-9 : near > high + 1e-9;
      return leaves ? end : near;
    };
    return [{ field, low: set(low, "low"), high: set(high, "high") }];
  });
}

/** Whether the wire's rows vouch for a card's ranges: no row, and they are only what was run. */
export const hasRows = (setup: RunSetup): boolean => insideOf(setup)?.(setup) ?? false;
