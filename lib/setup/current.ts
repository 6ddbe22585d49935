import { burnOffFor, currentForFeed, type BurnOffModel, type WireKind } from "@/lib/arc";
import type { ElectrodeClass } from "@/lib/trade";
import type { RunSetup } from "./run-setup";
import { electrodeOf } from "./window-for";

/** Arc length between contact-tip-to-work and extension, mm: 3 to 4 mm at normal volts, 1 to 2 mm short-circuit. */
export const ARC_LENGTH_MM = { normal: 3.5, shortCircuit: 1.5 };

/** The kind of wire by which burn-off and deposition are looked up; null for rods and while the process is unknown. */
export function wireKindOf(setup: RunSetup, electrode: ElectrodeClass | null): WireKind | null {
  const stainless = electrode === null ? setup.baseMetal === "stainless" : electrode.metal === "stainless";
  switch (setup.process) {
    case "FCAW-S":
      return stainless ? "stainless-cored" : "self-shielded";
    case "FCAW-G":
      return stainless ? "stainless-cored" : "flux-cored";
    case "GMAW":
      return "solid";
    default:
      return null;
  }
}

/** Electrode extension from tip to arc, mm; null while the tip to work is unknown. */
export function extensionOf({ ctwdMm, transfer }: RunSetup): number | null {
  const arc = transfer === "short-circuit" ? ARC_LENGTH_MM.shortCircuit : ARC_LENGTH_MM.normal;
  return ctwdMm === null ? null : Math.max(0, ctwdMm - arc);
}

export interface ComputedCurrent {
  readonly amps: number;
  readonly burnOff: BurnOffModel;
}

/**
 * Current by feed and tip to work, A; null where a reading or the wire's burn-off is not known, or the class, without
 * which the kind of wire is a guess.
 */
export function currentFromFeed(setup: RunSetup): ComputedCurrent | null {
  const electrode = electrodeOf(setup);
  const kind = electrode === null ? null : wireKindOf(setup, electrode);
  const { electrodeDiameterMm, wireFeedMPerMin } = setup;
  const burnOff =
    kind === null || electrodeDiameterMm === null ? null : burnOffFor(kind, electrodeDiameterMm);
  const extensionMm = extensionOf(setup);
  if (burnOff === null || extensionMm === null || wireFeedMPerMin === null) return null;
  return { amps: currentForFeed(burnOff, (wireFeedMPerMin * 1000) / 60, extensionMm), burnOff };
}
