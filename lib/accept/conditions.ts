import { missing, missingSymbols, type CaseContext } from "./case-context";
import { ROUNDING } from "./decide";
import { boundsOf, constantValue } from "./formula";
import type { Condition, WeldFlag } from "./rule";
import type { MissingQuantity, MissingReading } from "./verdict";

/** Three-valued: null is "not known", and `missing` says what would tell. */
export interface Applicability {
  readonly applies: boolean | null;
  readonly missing: readonly MissingReading[];
}

/** All conditions together: false as soon as one is, whatever else is unknown. */
export function applicability(conditions: readonly Condition[], context: CaseContext): Applicability {
  const answers = conditions.map((condition) => ({ condition, holds: holds(condition, context) }));
  if (answers.some((answer) => answer.holds === false)) return { applies: false, missing: [] };
  const unknown = answers.filter((answer) => answer.holds === null);
  if (unknown.length === 0) return { applies: true, missing: [] };
  return { applies: null, missing: unknown.flatMap(({ condition }) => whatTells(condition)) };
}

function holds(condition: Condition, context: CaseContext): boolean | null {
  const { weld } = context.input;
  if ("kind" in condition) return condition.kind.includes(weld.kind);
  if ("setting" in condition) return context.settings[condition.setting] === condition.is;
  if ("flag" in condition) {
    const flag = weld[condition.flag];
    return flag === null ? null : flag === condition.is;
  }
  if ("seam" in condition) return weld.seam === null ? null : condition.seam.includes(weld.seam);
  const symbol = context.symbols[condition.symbol];
  if (symbol === null) return null;
  const bound = (name: "above" | "atLeast" | "upTo" | "below"): number | null => {
    const constant = condition[name];
    return constant === undefined ? null : constantValue(constant, context.units);
  };
  // A measured symbol near a band's edge may belong to either band.
  const [low, high] = boundsOf(symbol);
  const sides = [low - symbol.spread, symbol.value, high + symbol.spread].map((value) =>
    within(value, bound("above"), bound("atLeast"), bound("upTo"), bound("below")),
  );
  return sides.every((side) => side === sides[0]) ? sides[0]! : null;
}

/** A size that differs from an edge by rounding alone (3/16 in written as 4.7625) lies on it. */
function within(
  value: number,
  above: number | null,
  atLeast: number | null,
  upTo: number | null,
  below: number | null,
): boolean {
  const beyond = (edge: number): boolean => value - edge > ROUNDING * edge;
  const short = (edge: number): boolean => edge - value > ROUNDING * edge;
  return (
    (above === null || beyond(above)) &&
    (atLeast === null || !short(atLeast)) &&
    (upTo === null || !beyond(upTo)) &&
    (below === null || short(below))
  );
}

function whatTells(condition: Condition): readonly MissingReading[] {
  if ("symbol" in condition) return missingSymbols([condition.symbol]);
  if ("flag" in condition) return [missing(flagAsked[condition.flag])];
  return [missing("seam" in condition ? "seam" : "weld-kind")];
}

const flagAsked = {
  alongLapEdge: "lap-edge",
  singleSided: "single-sided",
  transverseToTension: "transverse-to-tension",
  stiffenerToWeb: "stiffener-to-web",
  completePenetration: "complete-penetration",
} as const satisfies Record<WeldFlag, MissingQuantity>;
