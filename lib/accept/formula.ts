import { symbolNames, type Constant, type Formula, type SymbolName } from "./rule";

/** A number with its expanded uncertainty, already nil where the reading is taken as it stands. */
export interface SymbolValue {
  readonly value: number;
  readonly spread: number;
  /** Bounds where only those are known: the longer leg is at least the one that was read. Left out: the value itself. */
  readonly low?: number;
  readonly high?: number;
}

/** Least and greatest the symbol may be, its uncertainty aside; from 0 up when it is not known. */
export function boundsOf(symbol: SymbolValue | null): readonly [low: number, high: number] {
  if (symbol === null) return [0, Infinity];
  return [symbol.low ?? symbol.value, symbol.high ?? symbol.value];
}

/** What is known of the weld in the symbols of the formulas; null: not known. */
export type Symbols = Readonly<Record<SymbolName, SymbolValue | null>>;
export type UnitSystem = "si" | "us";

/** A limit as far as it is known: `low` and `high` agree when every symbol in it is. */
export interface LimitRange {
  readonly low: number;
  readonly high: number;
  /** Expanded uncertainty from measured symbols; 0 while low and high differ. */
  readonly spread: number;
  readonly unknown: readonly SymbolName[];
}

export function constantValue(constant: Constant, units: UnitSystem): number {
  return typeof constant === "number" ? constant : constant[units];
}

/**
 * Evaluates a limit. An unknown symbol may be any length from 0 up, so a capped formula still bounds the limit:
 * min(1 + 0.6 b, 4) lies between 1 and 4 whatever b.
 */
export function evaluateFormula(formula: Formula, symbols: Symbols, units: UnitSystem): LimitRange {
  const at = (bound: 0 | 1, shifted?: SymbolName, by = 0): number =>
    valueOf(formula, units, (name, falling) => {
      // What is taken away is greatest where the whole is least.
      const side = falling ? 1 - bound : bound;
      return boundsOf(symbols[name])[side]! + (name === shifted ? by : 0);
    });
  const low = at(0);
  const high = at(1);
  const used = symbolsIn(formula);
  const isOpen = (name: SymbolName): boolean => boundsOf(symbols[name])[0] !== boundsOf(symbols[name])[1];
  const unknown = low === high ? [] : used.filter(isOpen);
  const shares = used.map((name) => {
    const spread = symbols[name]?.spread ?? 0;
    return spread === 0 || low !== high ? 0 : (at(0, name, spread) - at(0, name, -spread)) / 2;
  });
  return { low, high, spread: Math.hypot(...shares), unknown };
}

function valueOf(
  formula: Formula,
  units: UnitSystem,
  symbol: (name: SymbolName, falling: boolean) => number,
): number {
  if (typeof formula === "number" || "si" in formula) return constantValue(formula, units);
  const all = (list: readonly Formula[]): number[] => list.map((part) => valueOf(part, units, symbol));
  if ("times" in formula) {
    const factor = constantValue(formula.times, units);
    return factor * symbol(formula.of, factor < 0);
  }
  if ("sum" in formula) return all(formula.sum).reduce((sum, value) => sum + value, 0);
  return "min" in formula ? Math.min(...all(formula.min)) : Math.max(...all(formula.max));
}

export function symbolsIn(formula: Formula): readonly SymbolName[] {
  if (typeof formula === "number" || "si" in formula) return [];
  if ("times" in formula) return [formula.of];
  const parts = "sum" in formula ? formula.sum : "min" in formula ? formula.min : formula.max;
  const found = new Set(parts.flatMap(symbolsIn));
  return symbolNames.filter((name) => found.has(name));
}

/** As a person writes it: "min(0.1 t, 0.5)". Constants in mm. */
export function formulaText(formula: Formula, units: UnitSystem): string {
  if (typeof formula === "number" || "si" in formula) return tidy(constantValue(formula, units));
  const list = (parts: readonly Formula[], by: string): string =>
    parts.map((part) => formulaText(part, units)).join(by);
  if ("times" in formula) {
    const factor = constantValue(formula.times, units);
    return factor === 1 ? formula.of : `${tidy(factor)} ${formula.of}`;
  }
  if ("sum" in formula) return list(formula.sum, " + ");
  return "min" in formula ? `min(${list(formula.min, ", ")})` : `max(${list(formula.max, ", ")})`;
}

function tidy(value: number): string {
  return String(Number(value.toFixed(4)));
}
