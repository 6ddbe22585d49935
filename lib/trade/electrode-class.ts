import type { Source } from "@/lib/base";
import type { Gas, Polarity, Process } from "./names";

export const electrodePositions = ["flat", "horizontal", "vertical-up", "vertical-down", "overhead"] as const;
export type ElectrodePosition = (typeof electrodePositions)[number];

export const electrodeFamilies = [
  "self-shielded-cored",
  "gas-shielded-cored",
  "stainless-self-shielded-cored",
  "stainless-gas-shielded-cored",
  "solid-wire",
  "stainless-solid-wire",
  "cellulosic",
  "rutile",
  "low-hydrogen",
  "iron-powder",
  "stainless-covered",
  "rod",
  "stainless-rod",
] as const;
export type ElectrodeFamily = (typeof electrodeFamilies)[number];

/** "limited": a few passes on thin plate; the data sheet says how many. */
export type PassRating = "multi" | "limited" | "single";

export interface ElectrodeClass {
  /** The classification as it stands on the spool, e.g. "E71T-11". Unique together with `process`. */
  readonly id: string;
  readonly standard: "AWS A5.20/A5.36" | "AWS A5.22" | "AWS A5.18" | "AWS A5.9" | "AWS A5.1" | "AWS A5.4";
  readonly process: Process;
  readonly family: ElectrodeFamily;
  /** Empty: the classification does not fix it, the data sheet does. */
  readonly polarity: readonly Polarity[];
  /** ["none"] for self-shielded and covered electrodes. Empty: not fixed by the classification. */
  readonly gases: readonly Gas[];
  /** Empty: not fixed by the classification. */
  readonly positions: readonly ElectrodePosition[];
  /** Positions outside the classification's list that published settings exist for; a note, not a fault. */
  readonly alsoUsed: readonly ElectrodePosition[];
  readonly passes: PassRating;
  readonly metal: "carbon-steel" | "stainless";
  readonly source: Source;
}
