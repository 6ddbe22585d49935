import { ampsForFeed, extensionFromCtwdMm, type AmpsEstimate, type Wire, type WireKind } from "@/lib/arc";
import type { ElectrodeClass } from "@/lib/trade";
import type { RunSetup } from "./run-setup";
import { electrodeOf } from "./window-for";

/** The kind of wire by which burn-off and deposition are looked up; null for rods and while the process is unknown. */
function wireKindOf(setup: RunSetup, electrode: ElectrodeClass | null): WireKind | null {
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

/** The wire of a set-up as lib/arc reckons with it; null for rods, and while process or size is unknown. */
export function wireOf(setup: RunSetup): Wire | null {
  const kind = wireKindOf(setup, electrodeOf(setup));
  return kind === null || setup.electrodeDiameterMm === null
    ? null
    : { kind, diameterMm: setup.electrodeDiameterMm };
}

/** The transfer as far as it shortens the arc: only solid wire is run in a short arc of its own. */
export function transferOf({ process, transfer }: RunSetup): RunSetup["transfer"] {
  return process === "GMAW" ? transfer : null;
}

/** Current by feed (m/min) and tip to work (mm); null where one of them or the wire's burn-off is not known. */
export function currentAt(
  setup: RunSetup,
  feedMPerMin = setup.wireFeedMPerMin,
  ctwdMm = setup.ctwdMm,
): AmpsEstimate | null {
  const wire = wireOf(setup);
  if (wire === null || feedMPerMin === null || ctwdMm === null) return null;
  return ampsForFeed(wire, feedMPerMin, extensionFromCtwdMm(ctwdMm, transferOf(setup)));
}
