import type { Source } from "@/lib/base";
import { arcEnergyKJPerMm, heatFactors, legFromFaceMm, travelForLeg, type Ranged } from "@/lib/arc";
import { currentAt, isFirstLayer, legAt, travelSpeed, wireOf, type RunSetup } from "@/lib/setup";
import { cite, isFillet, withoutDocument } from "@/lib/trade";
import type { DiagnoseInput } from "./input";
import type { Amount } from "./types";

/** What the models make of this bead; null where a reading they need is not known. */
export interface BeadPhysics {
  /** A, from feed and tip to work. */
  readonly currentA: number | null;
  /** Leg of a fillet by mass balance, mm; null unless travel was recorded or timed. */
  readonly legMm: number | null;
  /** mm/min: recorded, else timed, else inferred from the measured size of a fillet. */
  readonly travelMmPerMin: number | null;
  /** What the bead's size says of the travel, mm/min, where nothing was recorded or timed. */
  readonly travelInferred: Ranged | null;
  readonly estimates: readonly Estimate[];
}

export type Estimate = Amount & { readonly source: Source };

const massBalance = withoutDocument(
  "mass balance of wire and bead, deposition efficiency from a filler-metal handbook, fill from memory",
  "derived",
);
const arcEnergySource = cite("iso-tr-18491", "seen-part", { note: "volts · amps / travel" });

/** Relative error of a recorded current and of a recorded or timed travel. Own estimates. */
const READ = { amps: 0.03, travel: 0.05 };

/** Everything the arc relations can say about the bead as recorded. */
export function beadPhysics(setup: RunSetup, bead: DiagnoseInput["bead"]): BeadPhysics {
  const current = currentAt(setup);
  const known = travelSpeed(setup)?.mmPerMin ?? null;
  const inferred = known === null ? inferredTravel(setup, bead) : null;
  const travelMmPerMin = known ?? inferred?.value ?? null;
  const leg = known === null ? null : legAt(setup, setup.wireFeedMPerMin, known);
  const amps =
    setup.amps !== null
      ? { value: setup.amps, relativeError: READ.amps }
      : current && { value: current.amps, relativeError: current.highAmps / current.amps - 1 };
  const travel =
    travelMmPerMin === null
      ? null
      : { value: travelMmPerMin, relativeError: inferred?.relativeError ?? READ.travel };
  return {
    currentA: current?.amps ?? null,
    legMm: leg?.value ?? null,
    travelMmPerMin,
    travelInferred: inferred,
    estimates: [
      ...(current === null
        ? []
        : [
            {
              quantity: "current from feed and tip to work",
              valueSi: current.amps,
              unitKind: "current" as const,
              relativeError: current.highAmps / current.amps - 1,
              source: current.source,
            },
          ]),
      ...estimate("leg from feed and travel", leg, "small-length"),
      ...estimate("travel from the bead's size", inferred, "travel-speed"),
      ...heatOf(setup, amps, travel),
    ],
  };
}

/**
 * Travel, mm/min, by mass balance from the leg that a gauge gave, or from toe to toe across the face, which of all fillets of
 * that width is the one with the most metal. A weld in layers holds the metal of all of them.
 */
function inferredTravel(setup: RunSetup, bead: DiagnoseInput["bead"]): Ranged | null {
  const leg = bead.legMm ?? (bead.widthMm === null ? null : legFromFaceMm(bead.widthMm));
  const wire = wireOf(setup);
  if (leg === null || wire === null || setup.wireFeedMPerMin === null || !isFirstLayer(setup)) return null;
  return setup.joint !== null && isFillet(setup.joint)
    ? travelForLeg(wire, setup.wireFeedMPerMin, leg)
    : null;
}

function estimate(
  quantity: string,
  model: Ranged | null,
  unitKind: Amount["unitKind"],
  source = massBalance,
): readonly Estimate[] {
  return model === null
    ? []
    : [{ quantity, valueSi: model.value, unitKind, relativeError: model.relativeError, source }];
}

type Known = Pick<Ranged, "value" | "relativeError"> | null;

function heatOf({ volts, process }: RunSetup, amps: Known, travel: Known): readonly Estimate[] {
  if (volts === null || process === null || amps === null || travel === null) return [];
  const energy = arcEnergyKJPerMm({ volts, amps: amps.value, travelMmPerS: travel.value / 60 });
  const { k, source } = heatFactors[process];
  const relativeError = Math.hypot(amps.relativeError, travel.relativeError);
  const row = (quantity: string, valueSi: number, from: Source): Estimate => ({
    quantity,
    valueSi,
    unitKind: "heat-input",
    relativeError,
    source: from,
  });
  return [row("arc energy", energy, arcEnergySource), row("heat input", k * energy, source)];
}
