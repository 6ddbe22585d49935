import type { Source } from "@/lib/base";
import {
  ampsForFeed,
  arcEnergyKJPerMm,
  areaFromLegMm2,
  AREA_RELATIVE_ERROR,
  burnOffFor,
  depositAreaMm2,
  depositOf,
  heatFactors,
  legFromAreaMm,
  legFromFaceMm,
  travelForAreaMmPerS,
  type BurnOffModel,
  type Deposit,
  type WireKind,
} from "@/lib/arc";
import { travelSpeed, type RunSetup } from "@/lib/setup";
import { isFillet, type ElectrodeClass } from "@/lib/trade";
import type { DiagnoseInput } from "./input";
import type { Amount } from "./types";

/** What the models make of this bead; null where a reading they need is not known. */
export interface BeadPhysics {
  readonly burnOff: BurnOffModel | null;
  readonly extensionMm: number | null;
  readonly deposit: Deposit | null;
  /** A, from feed and tip to work. */
  readonly currentA: number | null;
  /** Leg of a fillet by mass balance, mm; null unless travel was recorded or timed. */
  readonly legMm: number | null;
  /** mm/min: recorded, else timed, else inferred from the measured size of a fillet. */
  readonly travelMmPerMin: number | null;
  readonly travelInferred: boolean;
  readonly estimates: readonly Estimate[];
}

export type Estimate = Amount & { readonly source: Source };

/** Arc length between contact-tip-to-work and extension, mm: 3 to 4 mm at normal volts, 1 to 2 mm short-circuit. */
export const ARC_LENGTH_MM = { normal: 3.5, shortCircuit: 1.5 };

const massBalance: Source = {
  document:
    "mass balance of wire and bead, deposition efficiency from a filler-metal handbook, fill from memory",
  confidence: "derived",
};

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

/** Everything the arc relations can say about the bead as recorded. */
export function beadPhysics(
  setup: RunSetup,
  electrode: ElectrodeClass | null,
  bead: DiagnoseInput["bead"],
): BeadPhysics {
  const kind = wireKindOf(setup, electrode);
  const diameterMm = setup.electrodeDiameterMm;
  const burnOff = kind === null || diameterMm === null ? null : burnOffFor(kind, diameterMm);
  const arcLength = setup.transfer === "short-circuit" ? ARC_LENGTH_MM.shortCircuit : ARC_LENGTH_MM.normal;
  const extensionMm = setup.ctwdMm === null ? null : Math.max(0, setup.ctwdMm - arcLength);
  const feed = setup.wireFeedMPerMin;
  const wire = kind === null || diameterMm === null ? null : { kind, diameterMm };
  const deposit = wire === null || feed === null ? null : depositOf(wire, feed);
  const currentA =
    wire === null || extensionMm === null || feed === null
      ? null
      : (ampsForFeed(wire, feed, extensionMm)?.amps ?? null);
  const known = travelSpeed(setup)?.mmPerMin ?? null;
  const inferred = known === null ? inferredTravel(setup, deposit, bead) : null;
  const legMm =
    deposit === null || known === null || setup.joint === null || !isFillet(setup.joint)
      ? null
      : legFromAreaMm(depositAreaMm2(deposit, known / 60));
  const partial = { burnOff, extensionMm, deposit, currentA, legMm };
  const travel = { travelMmPerMin: known ?? inferred, travelInferred: known === null && inferred !== null };
  return { ...partial, ...travel, estimates: estimatesOf(setup, { ...partial, ...travel }) };
}

/** Travel from the measured leg, or the face width of a fillet, by mass balance; mm/min. */
function inferredTravel(
  setup: RunSetup,
  deposit: Deposit | null,
  bead: DiagnoseInput["bead"],
): number | null {
  if (deposit === null || setup.joint === null || !isFillet(setup.joint)) return null;
  const leg = bead.legMm ?? (bead.widthMm === null ? null : legFromFaceMm(bead.widthMm));
  return leg === null ? null : travelForAreaMmPerS(deposit, areaFromLegMm2(leg)) * 60;
}

function estimatesOf(setup: RunSetup, p: Omit<BeadPhysics, "estimates">): readonly Estimate[] {
  const list: Estimate[] = [];
  const add = (
    quantity: string,
    valueSi: number | null,
    unitKind: Amount["unitKind"],
    relativeError: number,
    source: Source,
  ) => {
    if (valueSi !== null && Number.isFinite(valueSi))
      list.push({ quantity, valueSi, unitKind, relativeError, source });
  };
  if (p.burnOff !== null) {
    add(
      "current from feed and tip to work",
      p.currentA,
      "current",
      p.burnOff.relativeError,
      p.burnOff.source,
    );
  }
  add("leg from feed and travel", p.legMm, "small-length", AREA_RELATIVE_ERROR / 2, massBalance);
  // Leg counts twice in the area: 5 % of leg is 10 % of travel; a photo's face width hides convexity.
  if (p.travelInferred)
    add("travel from the bead's size", p.travelMmPerMin, "travel-speed", 0.15, massBalance);
  const amps = setup.amps ?? p.currentA;
  if (amps !== null && setup.volts !== null && p.travelMmPerMin !== null && setup.process !== null) {
    const energy = arcEnergyKJPerMm({ volts: setup.volts, amps, travelMmPerS: p.travelMmPerMin / 60 });
    const { k, source } = heatFactors[setup.process];
    const error = Math.hypot(
      setup.amps === null ? (p.burnOff?.relativeError ?? 0) : 0.03,
      p.travelInferred ? 0.15 : 0.05,
    );
    add("arc energy", energy, "heat-input", error, {
      document: "arc energy = volts · amps / travel (ISO/TR 18491)",
      confidence: "seen-part",
    });
    add("heat input", k * energy, "heat-input", error, source);
  }
  return list;
}
