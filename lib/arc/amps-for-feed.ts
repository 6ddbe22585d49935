import type { Source } from "@/lib/base";
import type { Transfer } from "@/lib/trade";
import { currentForFeed, feedForCurrent } from "./burn-off";
import { burnOffFor, type BurnOffModel } from "./burn-off-for";
import type { WireKind } from "./tables/burn-off-rows";

/** A wire as a set-up names it: its kind and the stored diameter, mm (1.2 for .045 in). */
export interface Wire {
  readonly kind: WireKind;
  readonly diameterMm: number;
}

export interface AmpsEstimate {
  readonly amps: number;
  /** Between these the true current is to be expected; wider outside the range of the data. */
  readonly lowAmps: number;
  readonly highAmps: number;
  /** Whether the answer lies among the currents the relation was fitted to. */
  readonly inRange: boolean;
  readonly source: Source;
}

/** Arc between contact-tip-to-work and extension, mm: 3 to 4 mm at normal volts, 1 to 2 mm short-circuit. From memory. */
export const ARC_MM = { normal: 3.5, shortCircuit: 1.5 } as const;

/** Electrode extension, mm, from contact tip to work; never below nought. */
export function extensionFromCtwdMm(ctwdMm: number, transfer: Transfer | null = null): number {
  return Math.max(0, ctwdMm - (transfer === "short-circuit" ? ARC_MM.shortCircuit : ARC_MM.normal));
}

/** Each doubling beyond the data multiplies the error as if it had been made this many times more. Own estimate. */
export const ERROR_PER_DOUBLING = 2;

/**
 * Current at a wire feed (m/min) and extension (mm), by the burn-off of this wire. Inside the data the bounds are the
 * stated error; outside they widen to about half as much again at twice the highest or half the lowest current. null:
 * no data for such a wire; NaN never.
 */
export function ampsForFeed(wire: Wire, feedMPerMin: number, extensionMm: number): AmpsEstimate | null {
  const model = burnOffFor(wire.kind, wire.diameterMm);
  if (model === null || !(feedMPerMin >= 0) || !(extensionMm >= 0)) return null;
  const amps = currentOf(model, (feedMPerMin * 1000) / 60, extensionMm);
  const factor = errorFactor(model, amps);
  const [low, high] = model.range;
  return {
    amps,
    lowAmps: amps / factor,
    highAmps: amps * factor,
    inRange: amps >= 0.99 * low && amps <= 1.01 * high,
    source: model.source,
  };
}

/** Wire feed, m/min, that draws a current (A) at an extension (mm): the inverse of `ampsForFeed`. null: no data. */
export function feedForAmps(wire: Wire, amps: number, extensionMm: number): number | null {
  const model = burnOffFor(wire.kind, wire.diameterMm);
  if (model === null || !(amps >= 0) || !(extensionMm >= 0)) return null;
  const [low] = model.range;
  const feed =
    amps >= low || !model.c
      ? feedForCurrent(model, amps, extensionMm)
      : (feedForCurrent(model, low, extensionMm) * amps) / low;
  return (feed * 60) / 1000;
}

/** A relation with a constant says nought below it: there the current falls in proportion from the lowest that was seen. */
function currentOf(model: BurnOffModel, feedMmPerS: number, extensionMm: number): number {
  const [low] = model.range;
  const lowest = feedForCurrent(model, low, extensionMm);
  return model.c && feedMmPerS < lowest
    ? (low * feedMmPerS) / lowest
    : currentForFeed(model, feedMmPerS, extensionMm);
}

function errorFactor({ range: [low, high], relativeError }: BurnOffModel, amps: number): number {
  const beyond = amps > high ? amps / high : amps < low ? low / Math.max(amps, 1e-9) : 1;
  return (1 + relativeError) ** (1 + ERROR_PER_DOUBLING * Math.log2(beyond));
}
