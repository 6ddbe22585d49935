import {
  electrodeClass,
  electrodeClasses,
  inputPowers,
  sizesWithRows,
  type ElectrodeClass,
} from "@/lib/trade";
import { setupOfAsk, type PlanAsk } from "./ask";
import { draftRun } from "./draft-run";
import { givesOf, type Given } from "./gives";
import type { PlanIssue } from "./issues";
import { electrodeOf, type RunSetup } from "@/lib/setup";

/** One column of a comparison: the same job with one thing changed. */
export interface Variant {
  readonly ask: PlanAsk;
  /** null where it does not go; `issue` says why. */
  readonly run: {
    readonly setup: RunSetup;
    readonly passes: number;
    readonly gives: readonly Given[];
  } | null;
  readonly issue: PlanIssue | null;
}

export interface Comparisons {
  readonly inputs: readonly Variant[];
  /** Empty for a wire that runs in one gas, or in none. */
  readonly gases: readonly Variant[];
  readonly wires: readonly Variant[];
}

function variant(ask: PlanAsk): Variant {
  const drafted = draftRun(ask);
  if (!drafted.ok) return { ask, run: null, issue: drafted.issues[0]! };
  const { chosen, size } = drafted.value;
  return {
    ask,
    run: { setup: chosen.setup, passes: chosen.passes, gives: givesOf(chosen, size, ask) },
    issue: null,
  };
}

/** Input against input, gas against gas, wire against wire, for one job. */
export function compare(ask: PlanAsk): Comparisons {
  return {
    inputs: inputPowers.map((inputPower) => variant({ ...ask, inputPower })),
    gases: otherGases(ask).map(variant),
    wires: otherWires(ask).map(variant),
  };
}

/** A class and its twin for the other gas, where there is one: E71T-1C and E71T-1M, E308LT1-1 and E308LT1-4. */
function otherGases(ask: PlanAsk): readonly PlanAsk[] {
  const own = electrodeOf(setupOfAsk(ask));
  if (own === null || own.gases.includes("none")) return [];
  const twins = electrodeClasses.filter((row) => row.process === own.process && stem(row) === stem(own));
  const pairs = [own, ...twins].flatMap((row) => row.gases.map((gas) => ({ electrodeClass: row.id, gas })));
  const once = pairs.filter(({ gas }, i) => pairs.findIndex((other) => other.gas === gas) === i);
  return once.length < 2 ? [] : once.map((pair) => ({ ...ask, ...pair }));
}

/** The name without what it says of the gas. */
const stem = ({ id, family }: ElectrodeClass): string =>
  family.startsWith("stainless") ? id.replace(/-1\/-4$|-[14]$/, "") : id.replace(/[CM]$/, "");

/** What a shop has on its shelf, by metal. */
const shelves = {
  "carbon-steel": ["E71T-11", "E71T-GS", "E71T-8", "E71T-1C", "E71T-1M", "ER70S-6"],
  stainless: ["E308LT0-3", "E308LT1-1", "E308LT1-4"],
} as const;

function otherWires(ask: PlanAsk): readonly PlanAsk[] {
  const own = electrodeOf(setupOfAsk(ask));
  if (own === null) return [];
  const shelf = shelves[own.metal].map((id) => electrodeClass(id, id.startsWith("ER") ? "GMAW" : null)!);
  const classes = [
    own,
    ...shelf.filter(({ id }) => stem({ ...own, id }) !== stem(own) || id === own.id),
  ].filter(({ id }, i, all) => all.findIndex((other) => other.id === id) === i);
  return classes.flatMap((row) => sizesWithRows(row).map((size) => withWire(ask, row, size)));
}

/** The same job with another wire: its own polarity, a gas it runs in, and short arc for solid wire. */
export function withWire(ask: PlanAsk, row: ElectrodeClass, electrodeDiameterMm: number): PlanAsk {
  const gas = ask.gas !== null && row.gases.includes(ask.gas) ? ask.gas : (usualGas(row) ?? null);
  return {
    ...ask,
    process: row.process,
    electrodeClass: row.id,
    electrodeDiameterMm,
    gas,
    polarity: row.polarity[0] ?? null,
    transfer: row.process === "GMAW" ? (ask.transfer ?? "short-circuit") : null,
  };
}

const usualGas = ({ gases }: ElectrodeClass) =>
  gases.includes("75Ar-25CO2") ? ("75Ar-25CO2" as const) : gases[0];
