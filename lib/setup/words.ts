import type {
  BaseMetal,
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

/** What each member of a vocabulary is called, as an answer to choose. Records, so that a new one needs a name. */
export const processWords: Readonly<Record<Process, string>> = {
  "FCAW-S": "Flux-cored, no gas (FCAW-S)",
  "FCAW-G": "Flux-cored with gas (FCAW-G)",
  GMAW: "Solid wire with gas (GMAW)",
  SMAW: "Stick (SMAW)",
  GTAW: "Tungsten (GTAW)",
};
export const transferWords: Readonly<Record<Transfer, string>> = {
  "short-circuit": "Short circuit",
  globular: "Globular",
  spray: "Spray",
  pulsed: "Pulsed",
};
export const polarityWords: Readonly<Record<Polarity, string>> = {
  DCEN: "DCEN (electrode −)",
  DCEP: "DCEP (electrode +)",
  AC: "AC",
};
export const gasWords: Readonly<Record<Gas, string>> = {
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
export const jointWords: Readonly<Record<Joint, string>> = {
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
export const positionWords: Readonly<Record<Position, string>> = {
  flat: "Flat",
  horizontal: "Horizontal",
  vertical: "Vertical",
  overhead: "Overhead",
};
export const progressionWords: Readonly<Record<Progression, string>> = { up: "Up", down: "Down" };
export const travelDirectionWords: Readonly<Record<TravelDirection, string>> = {
  drag: "Drag (pull)",
  square: "Square",
  push: "Push",
};
export const baseMetalWords: Readonly<Record<BaseMetal, string>> = {
  "carbon-steel": "Carbon steel",
  stainless: "Stainless",
  "low-alloy": "Low-alloy",
};
export const surfaceWords: Readonly<Record<Surface, string>> = {
  bright: "Bright metal",
  "mill-scale": "Mill scale",
  "light-rust": "Light rust",
  "heavy-rust": "Heavy rust",
  "oil-or-paint": "Oil or paint",
  galvanised: "Galvanised",
  primed: "Primed",
  wet: "Wet",
};
export const inputPowerWords: Readonly<Record<InputPower, string>> = {
  "120V": "120 V",
  "230V": "230 V",
  "400V-3ph": "400 V three-phase",
};
export const outdoorsWords: Readonly<Record<"false" | "true", string>> = {
  false: "Indoors, no draft",
  true: "Outdoors or drafty",
};

/** An answer inside a sentence or beside its label: "Mill scale" is "mill scale", while "T-joint" and "CO₂" stay. */
export function inText(answer: string): string {
  return /^[A-Z][a-z]/.test(answer) ? answer.charAt(0).toLowerCase() + answer.slice(1) : answer;
}

/** A whole vocabulary as it stands in running text. */
export function wordsInText<K extends string>(
  words: Readonly<Record<K, string>>,
): Readonly<Record<K, string>> {
  return Object.fromEntries(
    (Object.entries(words) as [K, string][]).map(([key, answer]) => [key, inText(answer)]),
  ) as Record<K, string>;
}
