import {
  electrodeClass,
  parameterWindow,
  positionsMeant,
  type ElectrodeClass,
  type ParameterWindow,
} from "@/lib/trade";
import type { RunSetup } from "./run-setup";

/** The known class of a set-up, null when none is given or the name is not in the table. */
export function electrodeOf(setup: RunSetup): ElectrodeClass | null {
  return setup.electrodeClass === null ? null : electrodeClass(setup.electrodeClass, setup.process);
}

/**
 * The starting window for this wire, diameter, gas, transfer and position, out-of-position reductions applied.
 * null when class or diameter is not known, or no line holds. What is unknown widens it: never a guess.
 * Throws nothing; a starting window is never a limit, the wire's own data sheet governs.
 */
export function windowFor(setup: RunSetup): ParameterWindow | null {
  const electrode = electrodeOf(setup);
  if (electrode === null || setup.electrodeDiameterMm === null) return null;
  return parameterWindow({
    electrode,
    diameterMm: setup.electrodeDiameterMm,
    gas: setup.gas,
    transfer: setup.transfer,
    positions: positionsMeant(setup.position, setup.progression),
  });
}
