import { electrodeClass, inputPowers, sizesWithRows } from "@/lib/trade";
import { electrodeOf } from "@/lib/setup";
import { setupOfAsk, type PlanAsk } from "./ask";
import { withWire } from "./compare";
import { draftRun } from "./draft-run";

export const wayCodes = ["input", "size", "wire", "flat", "leg"] as const;
export type WayCode = (typeof wayCodes)[number];

/** One thing changed, and the job can be planned. */
export interface Way {
  readonly code: WayCode;
  readonly ask: PlanAsk;
}

/** Wires that carry thick plate and thin, by metal: what a shop would reach for next. */
const nextWires = {
  "carbon-steel": ["E71T-11", "E71T-1M", "ER70S-6"],
  stainless: ["E308LT0-3", "E308LT1-4"],
} as const;

/** What to do when the machine, the wire or the plate cannot: each way was planned, the nearest first, one of a kind. */
export function waysOut(ask: PlanAsk): readonly Way[] {
  const goes = ({ ask: changed }: Way): boolean => draftRun(changed).ok;
  const kinds = [inputs(ask), sizes(ask), wires(ask), flat(ask), leg(ask)];
  return kinds.flatMap((ways) => ways.find(goes) ?? []);
}

/** A stronger input, the weakest of them first. */
function inputs(ask: PlanAsk): readonly Way[] {
  if (ask.inputPower === null) return [];
  const stronger = inputPowers.slice(inputPowers.indexOf(ask.inputPower) + 1);
  return stronger.map((inputPower) => ({ code: "input", ask: { ...ask, inputPower } }));
}

function sizes(ask: PlanAsk): readonly Way[] {
  const own = electrodeOf(setupOfAsk(ask));
  const size = ask.electrodeDiameterMm;
  if (own === null || size === null) return [];
  const others = sizesWithRows(own).filter((mm) => mm !== size);
  return others
    .toSorted((a, b) => Math.abs(a - size) - Math.abs(b - size))
    .map((electrodeDiameterMm) => ({ code: "size", ask: { ...ask, electrodeDiameterMm } }));
}

function wires(ask: PlanAsk): readonly Way[] {
  const own = electrodeOf(setupOfAsk(ask));
  if (own === null) return [];
  return nextWires[own.metal].flatMap((id) => {
    const row = electrodeClass(id, id.startsWith("ER") ? "GMAW" : null)!;
    if (row.id === own.id) return [];
    return sizesWithRows(row).map((size): Way => ({ code: "wire", ask: withWire(ask, row, size) }));
  });
}

const flat = (ask: PlanAsk): readonly Way[] =>
  ask.position === null || ask.position === "flat"
    ? []
    : [{ code: "flat", ask: { ...ask, position: "flat", progression: null } }];

/** No leg asked for: what one pass leaves. */
const leg = (ask: PlanAsk): readonly Way[] =>
  ask.targetLegMm === null ? [] : [{ code: "leg", ask: { ...ask, targetLegMm: null } }];
