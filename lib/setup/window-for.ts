import {
  electrodeClassesNamed,
  parameterWindow,
  positionsMeant,
  type ElectrodeClass,
  type ParameterWindow,
  type Process,
  type WindowQuery,
} from "@/lib/trade";
import type { RunSetup } from "./run-setup";

/**
 * The classes the recorded name may mean. Empty when none is given or the name is not in the table; two where wire
 * and rod share a classification (ER70S-6) and the process does not say which.
 */
export function electrodesMeant(setup: RunSetup): readonly ElectrodeClass[] {
  return setup.electrodeClass === null ? [] : electrodeClassesNamed(setup.electrodeClass, setup.process);
}

/** The one class of a set-up; null when unknown or when the name leaves wire and rod open. */
export function electrodeOf(setup: RunSetup): ElectrodeClass | null {
  const [first, second] = electrodesMeant(setup);
  return second === undefined ? (first ?? null) : null;
}

/**
 * The process of a set-up: as recorded, else the one its class leaves no choice about. A class whose gas is open ("G") may
 * be either kind of flux-cored wire, and says nothing.
 */
export function processMeant(setup: RunSetup): Process | null {
  if (setup.process !== null) return setup.process;
  const electrode = electrodeOf(setup);
  return electrode !== null && electrode.gases.length + Number(electrode.process === "SMAW") > 0
    ? electrode.process
    : null;
}

/** What a set-up asks the windows; null when class or diameter is not known. What is unknown stays open. */
export function windowQueryFor(setup: RunSetup): WindowQuery | null {
  const electrode = electrodeOf(setup);
  if (electrode === null || setup.electrodeDiameterMm === null) return null;
  return {
    electrode,
    diameterMm: setup.electrodeDiameterMm,
    gas: setup.gas,
    transfer: setup.transfer,
    positions: positionsMeant(setup.position, setup.progression),
  };
}

/**
 * The starting window for this wire, diameter, gas, transfer and position, out-of-position reductions applied.
 * null when class or diameter is not known, or no line holds. What is unknown widens it: never a guess.
 * A starting window is never a limit; the wire's own data sheet governs.
 */
export function windowFor(setup: RunSetup): ParameterWindow | null {
  const query = windowQueryFor(setup);
  return query === null ? null : parameterWindow(query);
}
