import type { CauseId } from "../cause-ids";

/** What a welder has a hand on. */
export type Knob =
  | "volts"
  | "current"
  | "tip-to-work"
  | "travel"
  | "gas-flow"
  | "arc-length"
  | "gun-lean"
  | "gap"
  | "plate-heat"
  | "size-of-pass"
  | "progression";

/** The knob that a cause's correction turns, and which way: up (1) or down (-1). */
export interface Turn {
  readonly knob: Knob;
  readonly way: 1 | -1;
}

const turn = (knob: Knob, way: 1 | -1): Turn => ({ knob, way });

/** Causes whose correction turns something. What is not here (clean, screen, change the tip) pulls against nothing. */
export const turns: Partial<Readonly<Record<CauseId, Turn>>> = {
  "volt-high": turn("volts", -1),
  "volt-low": turn("volts", 1),
  "wfs-high": turn("current", -1),
  "wfs-low": turn("current", 1),
  "ctwd-long": turn("tip-to-work", -1),
  "ctwd-short": turn("tip-to-work", 1),
  "travel-fast": turn("travel", -1),
  "travel-slow": turn("travel", 1),
  "pool-ahead": turn("travel", 1),
  "gas-high": turn("gas-flow", -1),
  "gas-low": turn("gas-flow", 1),
  "arc-long": turn("arc-length", -1),
  "arc-short": turn("arc-length", 1),
  "drag-excess": turn("gun-lean", -1),
  "push-excess": turn("gun-lean", -1),
  gap: turn("gap", -1),
  "groove-tight": turn("gap", 1),
  "base-cold-thick": turn("plate-heat", 1),
  "heat-interpass": turn("plate-heat", -1),
  downhill: turn("progression", 1),
};

/** Corrections that make the pool bigger and hotter, and those that make it smaller and cooler. */
export const hotter: readonly CauseId[] = [
  "wfs-low",
  "volt-low",
  "ctwd-long",
  "travel-fast",
  "base-cold-thick",
  "input-power",
];
export const cooler: readonly CauseId[] = [
  "wfs-high",
  "volt-high",
  "arc-long",
  "ctwd-short",
  "travel-slow",
  "pool-ahead",
  "thin-base",
  "heat-interpass",
  "pass-too-big",
];

/** Whether two corrections undo each other: the same knob both ways, or one hotter and one cooler. */
export function pullApart(a: CauseId, b: CauseId): boolean {
  const [one, other] = [turns[a], turns[b]];
  const sameKnob =
    one !== undefined && other !== undefined && one.knob === other.knob && one.way !== other.way;
  return sameKnob || (hotter.includes(a) && cooler.includes(b)) || (cooler.includes(a) && hotter.includes(b));
}

/**
 * Causes that call for the same thing from different sides: more heat, less heat and metal, better cover, a better aim.
 * Between two of one family the first change is hardly wrong, so they do not keep each other from standing out.
 */
export const families: readonly (readonly CauseId[])[] = [
  ["wfs-low", "volt-low", "ctwd-long", "base-cold-thick", "input-power", "arc-short"],
  ["wfs-high", "travel-slow", "pass-too-big", "pool-ahead", "thin-base", "heat-interpass"],
  ["gas-low", "draft", "nozzle-fouled"],
  ["work-angle", "placement"],
  ["slag-left", "placement", "bead-shape"],
];

export const sameFamily = (a: CauseId, b: CauseId): boolean =>
  a === b || families.some((family) => family.includes(a) && family.includes(b));
