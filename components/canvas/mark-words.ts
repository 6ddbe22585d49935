import type { MarkGroup } from "@/lib/marks";
import {
  isFillet,
  patterns,
  type Joint,
  type Pattern,
  type Place,
  type Position,
  type Stretch,
} from "@/lib/trade";

/** How each place across the weld is called on this joint. */
export interface PlaceChoice {
  readonly id: Place;
  readonly name: string;
}

const placeNames: Readonly<Record<Place, string>> = {
  "upper-toe": "Upper toe",
  "lower-toe": "Lower toe",
  "left-toe": "Left toe",
  "right-toe": "Right toe",
  "both-toes": "Both toes",
  face: "Face",
  root: "Root",
  beside: "Beside the weld",
};

const surfacing: ReadonlySet<Joint> = new Set<Joint>(["bead-on-plate", "stringer-pad"]);

/**
 * The places that make sense: a horizontal weld has an upper and a lower toe, any other a left and a right one, seen
 * from its start towards its crater. A T or lap weld of unknown position is most often laid horizontally, but not
 * surely, so then all four are offered. A bead on plate has no root. `kept` is never lost.
 */
export function placeChoices(
  joint: Joint | null,
  position: Position | null,
  kept: Place | null = null,
): readonly PlaceChoice[] {
  const upDown: readonly Place[] = ["upper-toe", "lower-toe"];
  const leftRight: readonly Place[] = ["left-toe", "right-toe"];
  const unsure = position === null && (joint === null || isFillet(joint));
  const toes = unsure ? [...upDown, ...leftRight] : position === "horizontal" ? upDown : leftRight;
  const root: readonly Place[] = joint !== null && surfacing.has(joint) ? [] : ["root"];
  const fitting = [...toes, "both-toes", "face", ...root, "beside"] as const;
  const all = kept !== null && !fitting.includes(kept) ? [...fitting, kept] : fitting;
  return all.map((id) => ({ id, name: placeNames[id] }));
}

/** Whether "left" and "right" need to be explained. */
export function namesLeftAndRight(choices: readonly PlaceChoice[]): boolean {
  return choices.some((choice) => choice.id === "left-toe");
}

export const stretchNames: Readonly<Record<Stretch, string>> = {
  start: "At the start",
  run: "Along the run",
  "whole-length": "Whole length",
  crater: "In the crater",
  restart: "At a restart",
};

export const patternNames: Readonly<Record<Pattern, string>> = {
  single: "Single",
  scattered: "Scattered",
  clustered: "In a cluster",
  "in-line": "In a line",
  herringbone: "Herringbone",
  periodic: "At even spacing",
  intermittent: "On and off",
  continuous: "Unbroken",
  "one-side": "One side only",
  "weave-turns": "At the turns of the weave",
  "with-soot": "Soot beside it",
  "with-dull-grey-face": "Face dull and grey",
  fine: "Fine",
  coarse: "Coarse",
};

const groupPatterns: Readonly<Record<MarkGroup, readonly Pattern[]>> = {
  gas: [
    "single",
    "scattered",
    "clustered",
    "in-line",
    "herringbone",
    "periodic",
    "with-soot",
    "with-dull-grey-face",
  ],
  shape: ["continuous", "intermittent", "periodic", "one-side", "weave-turns"],
  fusion: ["continuous", "intermittent", "one-side", "weave-turns"],
  crack: ["single", "in-line", "intermittent", "continuous"],
  slag: ["single", "scattered", "in-line", "continuous", "intermittent", "one-side", "weave-turns"],
  surface: ["single", "scattered", "clustered", "one-side", "fine", "coarse", "with-soot"],
};

/** The patterns worth asking of a group, and those already ticked. */
export function patternChoices(group: MarkGroup, ticked: readonly Pattern[]): readonly Pattern[] {
  return patterns.filter((pattern) => groupPatterns[group].includes(pattern) || ticked.includes(pattern));
}
