/** Closed vocabularies of how a bead is run. Every one is a union; "unknown" is null, never a member. */
export const processes = ["FCAW-S", "FCAW-G", "GMAW", "SMAW", "GTAW"] as const;
export type Process = (typeof processes)[number];

export const transfers = ["short-circuit", "globular", "spray", "pulsed"] as const;
export type Transfer = (typeof transfers)[number];

export const polarities = ["DCEN", "DCEP", "AC"] as const;
export type Polarity = (typeof polarities)[number];

export const gases = [
  "none",
  "CO2",
  "75Ar-25CO2",
  "80Ar-20CO2",
  "90Ar-10CO2",
  "98Ar-2O2",
  "98Ar-2CO2",
  "90He-7.5Ar-2.5CO2",
  "Ar",
] as const;
export type Gas = (typeof gases)[number];

export const joints = [
  "bead-on-plate",
  "stringer-pad",
  "lap",
  "tee",
  "outside-corner",
  "butt-open",
  "butt-backed",
  "groove-open",
  "groove-backed",
] as const;
export type Joint = (typeof joints)[number];

export const positions = ["flat", "horizontal", "vertical", "overhead"] as const;
export type Position = (typeof positions)[number];

export const progressions = ["up", "down"] as const;
export type Progression = (typeof progressions)[number];

export const travelDirections = ["drag", "square", "push"] as const;
export type TravelDirection = (typeof travelDirections)[number];

export const baseMetals = ["carbon-steel", "stainless", "low-alloy"] as const;
export type BaseMetal = (typeof baseMetals)[number];

export const surfaces = [
  "bright",
  "mill-scale",
  "light-rust",
  "heavy-rust",
  "oil-or-paint",
  "galvanised",
  "primed",
  "wet",
] as const;
export type Surface = (typeof surfaces)[number];

export const inputPowers = ["120V", "230V", "400V-3ph"] as const;
export type InputPower = (typeof inputPowers)[number];

/** Joints whose weld is a fillet; the rest are judged as butt or surfacing welds. */
export function isFillet(joint: Joint): boolean {
  return joint === "lap" || joint === "tee" || joint === "outside-corner";
}

/** Processes that leave slag: the torch is dragged, never pushed. */
export function isSlagProcess(process: Process): boolean {
  return process === "FCAW-S" || process === "FCAW-G" || process === "SMAW";
}

export function isGasShielded(process: Process): boolean {
  return process === "FCAW-G" || process === "GMAW" || process === "GTAW";
}
