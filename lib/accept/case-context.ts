import type { Quantity } from "@/lib/measure";
import { solveFillet, throatOfLeg, legOfThroat, type FilletSection } from "@/lib/measure";
import { spreadOf, unitsOf, type DecisionRule } from "./decide";
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
  /** How near a limit a gauge reading may come. */
  readonly rule: DecisionRule;
  readonly symbols: Symbols;
  /** What the gauges say of the cross section, all together; null for a weld that is no fillet. */
  readonly section: FilletSection | null;
}

export function caseContext(input: JudgeInput, settings: Settings): CaseContext {
  const rule = (settings["gauges"] ?? "as-read") as DecisionRule;
  const { weld, beadReadings } = input;
  const section = weld.kind === "fillet" ? solveFillet(beadReadings, weld.plateAngleDeg) : null;
  return { input, settings, units: unitsOf(settings), rule, symbols: symbolsOf(input, rule), section };
}

function symbolsOf({ weld, beadReadings }: JudgeInput, rule: DecisionRule): Symbols {
  const stated = (value: number | null): SymbolValue | null => (value === null ? null : { value, spread: 0 });
  const measured = (quantity: Quantity | null): SymbolValue | null =>
    quantity === null ? null : { value: quantity.value, spread: spreadOf(quantity, rule) };
  // Equal legs: a = z cos(angle / 2). A fillet asked for by one is asked for by the other.
  const angle = weld.plateAngleDeg;
  const throat = weld.throatMm ?? (weld.legMm === null ? null : throatOfLeg(weld.legMm, angle));
  const leg = weld.legMm ?? (weld.throatMm === null ? null : legOfThroat(weld.throatMm, angle));
  return {
    t: stated(weld.thicknessMm),
    s: stated(weld.buttThicknessMm ?? weld.thicknessMm),
    a: stated(throat),
    z: stated(leg),
    b: measured(beadReadings.width) ?? stated(weld.faceWidthMm),
    L: stated(weld.lengthMm),
    r: stated(weld.rootWidthMm),
    m: longestLeg(beadReadings, measured),
    h: measured(beadReadings.reinforcement),
    A: measured(beadReadings.throat),
  };
}

/** With one leg read, the longest is that or more. */
function longestLeg(
  { leg1, leg2 }: JudgeInput["beadReadings"],
  measured: (quantity: Quantity | null) => SymbolValue | null,
): SymbolValue | null {
  const one = measured(leg1);
  const other = measured(leg2);
  if (one === null || other === null) {
    const known = one ?? other;
    return known === null ? null : { ...known, low: known.value, high: Infinity };
  }
  return one.value >= other.value ? one : other;
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
  A: "throat",
};

/** What would tell the unknown symbols. */
export function missingSymbols(names: readonly SymbolName[]): readonly MissingReading[] {
  return [...new Set(names.map((name) => symbolReading[name]))].map((quantity) => missing(quantity));
}
