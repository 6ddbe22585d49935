import type { RunSetup } from "@/lib/setup";
import type { Card, CardField, CardRange } from "./card";

/** A dial of a bead that stands outside its card. */
export interface OffCard extends CardRange {
  readonly value: number;
}

/** Readings of a dial fall between its steps: so much of the range's end is not called outside. Own estimate. */
const SLACK = 0.002;

/** What of a bead's set-up lies outside the card it was run by; what is not known is not outside. */
export function offCard({ ranges }: Pick<Card, "ranges">, setup: RunSetup): readonly OffCard[] {
  return ranges.flatMap((range) => {
    const value = setup[range.field];
    if (value === null) return [];
    const slack = SLACK * Math.max(Math.abs(range.low), Math.abs(range.high));
    return value < range.low - slack || value > range.high + slack ? [{ ...range, value }] : [];
  });
}

/** What a card fixes and a bead was run with otherwise: another wire, pole, gas, joint or position. */
export const fixedFields = [
  "process",
  "electrodeClass",
  "electrodeDiameterMm",
  "polarity",
  "gas",
  "joint",
  "position",
  "progression",
  "baseMetal",
] as const;

export function otherThanCard(
  { setup: card }: Pick<Card, "setup">,
  setup: RunSetup,
): readonly (typeof fixedFields)[number][] {
  return fixedFields.filter(
    (field) => card[field] !== null && setup[field] !== null && card[field] !== setup[field],
  );
}

/** Dials of a card that a bead does not say. */
export function notSaid({ ranges }: Pick<Card, "ranges">, setup: RunSetup): readonly CardField[] {
  return ranges.filter(({ field }) => setup[field] === null).map(({ field }) => field);
}
