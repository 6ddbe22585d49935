import type { MeasuredMark } from "@/lib/measure";
import type { UnitPreferences } from "@/lib/units";
import { markSizeText } from "./length-text";

/** [4, 6, 7, 8] -> "4, 6–8" */
export function numberRanges(numbers: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const number of numbers.toSorted((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last && last[1] === number - 1) last[1] = number;
    else runs.push([number, number]);
  }
  return runs.map(([from, to]) => (from === to ? `${from}` : `${from}–${to}`)).join(", ");
}

/** From the smallest to the largest of several marks, with the largest uncertainty among them; "no scale" without one. */
export function sizeRange(marks: readonly (MeasuredMark | null)[], units: UnitPreferences): string {
  const round = marks.flatMap((mark) => mark?.diameterMm ?? []);
  const long = marks.flatMap((mark) => mark?.lengthMm ?? []);
  const sizes = round.length === marks.length ? round : long;
  if (sizes.length === 0)
    return marks.some((mark) => mark?.issues.some(({ code }) => code === "no-scale")) ? "no scale" : "";
  const values = sizes.map(({ value }) => value);
  const u = Math.max(...sizes.map(({ expandedUncertainty }) => expandedUncertainty));
  const symbol = sizes === round ? "⌀ " : "";
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const [from, to] = [markSizeText(low, units, u), markSizeText(high, units, u)];
  return `${symbol}${from === to || from.startsWith("under") ? to : `${from} to ${to}`}`;
}
