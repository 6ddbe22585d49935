import type { Source } from "@/lib/base";
import { emptyRunSetup, type RunSetup } from "@/lib/setup";
import { feedCap, ownEstimate, remark, type InputPower } from "@/lib/trade";
import { modelFor } from "./model";

/** The wire for which a top feed is known on 120 V. */
const known: RunSetup = {
  ...emptyRunSetup,
  process: "FCAW-S",
  electrodeClass: "E71T-11",
  electrodeDiameterMm: 0.9,
  polarity: "DCEN",
  gas: "none",
  position: "flat",
};

/**
 * Arc power, kW, at which a mains input gives out: that of the one wire whose top feed is known, by its rows and burn-off.
 * null: no such point is known for this input; the plate on the machine says what it gives.
 */
export function inputPowerKw(input: InputPower): { readonly value: number; readonly source: Source } | null {
  const cap = feedCap(input, "FCAW-S", 0.9);
  const at = cap === null ? null : (modelFor(known)?.at(cap.maxWireFeedMPerMin) ?? null);
  if (at === null) return null;
  return {
    value: (at.volts * at.current.amps) / 1000,
    source: remark(
      ownEstimate,
      "as much arc power as 0.9 mm self-shielded wire draws where this input gives out",
    ),
  };
}
