import type { Quantity } from "@/lib/measure";
import { spreadOf, unitsOf } from "./decide";
import type { Symbols, SymbolValue, UnitSystem } from "./formula";
import type { SymbolName } from "./rule";
import type { JudgeInput } from "./types";
import type { MissingQuantity, MissingReading } from "./verdict";
import { gaugeFor } from "./rule";

export type Settings = Readonly<Record<string, string | boolean | number>>;

/** One case as the evaluator needs it: the input, its settings, its symbols. */
export interface CaseContext {
  readonly input: JudgeInput;
  readonly settings: Settings;
  readonly units: UnitSystem;
  /** Guard bands for gauge readings too. */
  readonly guarded: boolean;
  readonly symbols: Symbols;
}

export function caseContext(input: JudgeInput, settings: Settings): CaseContext {
  const guarded = settings["gauges"] === "guarded";
  return { input, settings, units: unitsOf(settings), guarded, symbols: symbolsOf(input, guarded) };
}

function symbolsOf({ weld, beadReadings }: JudgeInput, guarded: boolean): Symbols {
  const stated = (value: number | null): SymbolValue | null => (value === null ? null : { value, spread: 0 });
  const measured = (quantity: Quantity | null): SymbolValue | null =>
    quantity === null ? null : { value: quantity.value, spread: spreadOf(quantity, guarded) };
  const root2 = Math.SQRT2;
  // Equal legs at 90 degrees: a = z / sqrt(2). A fillet asked for by one is asked for by the other.
  const throat = weld.throatMm ?? (weld.legMm === null ? null : weld.legMm / root2);
  const leg = weld.legMm ?? (weld.throatMm === null ? null : weld.throatMm * root2);
  return {
    t: stated(weld.thicknessMm),
    s: stated(weld.buttThicknessMm ?? weld.thicknessMm),
    a: stated(throat),
    z: stated(leg),
    b: measured(beadReadings.width) ?? stated(weld.faceWidthMm),
    L: stated(weld.lengthMm),
    r: stated(weld.rootWidthMm),
    m: measured(longestLeg(beadReadings)),
    h: measured(beadReadings.reinforcement),
  };
}

function longestLeg({ leg1, leg2 }: JudgeInput["beadReadings"]): Quantity | null {
  if (leg1 === null || leg2 === null) return leg1 ?? leg2;
  return leg1.value >= leg2.value ? leg1 : leg2;
}

export function missing(quantity: MissingQuantity, observationId: string | null = null): MissingReading {
  return { quantity, gauge: gaugeFor[quantity], observationId };
}

const symbolReading: Readonly<Record<SymbolName, MissingQuantity>> = {
  t: "thickness",
  s: "thickness",
  a: "specified-throat",
  z: "specified-leg",
  b: "width",
  L: "weld-length",
  r: "root-width",
  m: "leg-1",
  h: "reinforcement",
};

/** What would tell the unknown symbols. */
export function missingSymbols(names: readonly SymbolName[]): readonly MissingReading[] {
  return [...new Set(names.map((name) => symbolReading[name]))].map((quantity) => missing(quantity));
}
