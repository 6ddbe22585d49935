import type { Source } from "@/lib/base";
import { isSlagProcess } from "@/lib/trade";
import type { RunSetup } from "./run-setup";
import { dragOnSlag } from "./sources";
import { electrodeOf } from "./window-for";

/** Fields a classification settles by itself. */
export type UsualField = "process" | "polarity" | "gas" | "travelDirection";

export type Usual = {
  readonly [F in UsualField]: {
    readonly field: F;
    readonly value: NonNullable<RunSetup[F]>;
    readonly source: Source;
  };
}[UsualField];

/**
 * What is usual for the recorded class in the fields still unknown: offered, never filled in. Only where the class
 * leaves no choice (one polarity, one gas); a field that is known is never offered again, right or wrong.
 */
export function usualForClass(setup: RunSetup): readonly Usual[] {
  const electrode = electrodeOf(setup);
  if (electrode === null) return [];
  const { source } = electrode;
  const [polarity, otherPolarity] = electrode.polarity;
  const [gas, otherGas] = electrode.gases;
  const offers: readonly (Usual | null)[] = [
    // A class that fixes no gas ("G") may be either kind of flux-cored wire.
    gas === undefined ? null : { field: "process", value: electrode.process, source },
    polarity === undefined || otherPolarity ? null : { field: "polarity", value: polarity, source },
    gas === undefined || otherGas ? null : { field: "gas", value: gas, source },
    isSlagProcess(electrode.process) ? { field: "travelDirection", value: "drag", source: dragOnSlag } : null,
  ];
  return offers.filter((offer): offer is Usual => offer !== null && setup[offer.field] === null);
}
