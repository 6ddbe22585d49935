import type {
  BaseMetal,
  ElectrodeFamily,
  Gas,
  InputPower,
  Joint,
  Polarity,
  Position,
  Process,
  Progression,
  Surface,
  Transfer,
  TravelDirection,
} from "@/lib/trade";

/** What each member of a vocabulary is called on the form. Records, so that a new member cannot go without a name. */
export const processWords: Record<Process, string> = {
  "FCAW-S": "Flux-cored, no gas (FCAW-S)",
  "FCAW-G": "Flux-cored with gas (FCAW-G)",
  GMAW: "Solid wire with gas (GMAW)",
  SMAW: "Stick (SMAW)",
  GTAW: "Tungsten (GTAW)",
};
export const transferWords: Record<Transfer, string> = {
  "short-circuit": "Short circuit",
  globular: "Globular",
  spray: "Spray",
  pulsed: "Pulsed",
};
export const polarityWords: Record<Polarity, string> = {
  DCEN: "DCEN (electrode −)",
  DCEP: "DCEP (electrode +)",
  AC: "AC",
};
export const gasWords: Record<Gas, string> = {
  none: "No gas",
  CO2: "CO₂",
  "75Ar-25CO2": "75 argon / 25 CO₂",
  "80Ar-20CO2": "80 argon / 20 CO₂",
  "90Ar-10CO2": "90 argon / 10 CO₂",
  "98Ar-2O2": "98 argon / 2 oxygen",
  "98Ar-2CO2": "98 argon / 2 CO₂",
  "90He-7.5Ar-2.5CO2": "90 helium / 7.5 argon / 2.5 CO₂",
  Ar: "Argon",
};
export const jointWords: Record<Joint, string> = {
  "bead-on-plate": "Bead on plate",
  "stringer-pad": "Pad of stringers",
  lap: "Lap",
  tee: "T-joint",
  "outside-corner": "Outside corner",
  "butt-open": "Butt, open root",
  "butt-backed": "Butt, backed",
  "groove-open": "Groove, open root",
  "groove-backed": "Groove, backed",
};
export const positionWords: Record<Position, string> = {
  flat: "Flat",
  horizontal: "Horizontal",
  vertical: "Vertical",
  overhead: "Overhead",
};
export const progressionWords: Record<Progression, string> = { up: "Up", down: "Down" };
export const directionWords: Record<TravelDirection, string> = {
  drag: "Drag (pull)",
  square: "Square",
  push: "Push",
};
export const metalWords: Record<BaseMetal, string> = {
  "carbon-steel": "Carbon steel",
  stainless: "Stainless",
  "low-alloy": "Low-alloy",
};
export const surfaceWords: Record<Surface, string> = {
  bright: "Bright metal",
  "mill-scale": "Mill scale",
  "light-rust": "Light rust",
  "heavy-rust": "Heavy rust",
  "oil-or-paint": "Oil or paint",
  galvanised: "Galvanised",
  primed: "Primed",
  wet: "Wet",
};
export const inputWords: Record<InputPower, string> = {
  "120V": "120 V",
  "230V": "230 V",
  "400V-3ph": "400 V three-phase",
};
export const familyWords: Record<ElectrodeFamily, string> = {
  "self-shielded-cored": "Flux-cored, no gas",
  "gas-shielded-cored": "Flux-cored with gas",
  "stainless-self-shielded-cored": "Stainless flux-cored, no gas",
  "stainless-gas-shielded-cored": "Stainless flux-cored with gas",
  "solid-wire": "Solid wire",
  "stainless-solid-wire": "Stainless solid wire",
  cellulosic: "Stick, cellulosic",
  rutile: "Stick, rutile",
  "low-hydrogen": "Stick, low hydrogen",
  "iron-powder": "Stick, iron powder",
  "stainless-covered": "Stick, stainless",
  rod: "Rod",
  "stainless-rod": "Stainless rod",
};
