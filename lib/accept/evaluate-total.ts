import { sumQuantities, worstAmount, worstLength, type Quantity } from "@/lib/measure";
import { missing, type CaseContext } from "./case-context";
import { certainInWindow, type Spread } from "./certain-in-window";
import { decide, spreadOf } from "./decide";
import { constantValue, evaluateFormula } from "./formula";
import { decided, limitOf, type Outcome } from "./outcome";
import { isPatch } from "./size-of";
import { termsOf, type Term, type TotalTest } from "./total-terms";
import type { Observation } from "./types";
import type { MissingReading } from "./verdict";

/**
 * The worst total in any window, between what is certain and what is possible: an observation whose threshold reading,
 * size or place is missing counts towards the possible only. Meets when even the possible total does.
 */
export function evaluateTotal(
  test: TotalTest,
  observations: readonly Observation[],
  context: CaseContext,
): Outcome {
  const range = evaluateFormula(test.limit, context.symbols, context.units);
  const unit = test.of === "count" ? "count" : "mm";
  const limit = limitOf(test.limit, range, "<=", unit, context.units);
  const terms = termsOf(test, observations, context);
  const low = certainTotal(terms, test, context);
  const high = possibleTotal(terms, test, context);
  const unread = terms.some((term) => term.most === null);
  const nothingRead = terms.length > 0 && terms.every((term) => term.least === null);
  const apart = high !== null && high.value > low.value * (1 + 1e-9);
  return decided(
    decide(
      {
        low: low.value - spreadOf(low, context.rule),
        high: high === null ? Infinity : high.value + spreadOf(high, context.rule),
        spread: 0,
      },
      "<=",
      range,
    ),
    limit,
    {
      // A total of which nothing was read is no nought.
      value: nothingRead ? null : (high ?? low).value,
      expandedUncertainty: nothingRead ? null : (high ?? low).expandedUncertainty,
      readingsUsed: terms.map((term) => term.observation.id),
      figuresUsed: terms.flatMap((term) => term.figures),
      better: whatHelps(terms, test, apart),
      incomplete: unread || apart,
    },
  );
}

/** No less than this lies in some window. */
function certainTotal(terms: readonly Term[], test: TotalTest, context: CaseContext): Quantity {
  const sure = terms.filter((term) => term.counts === true && term.least !== null);
  const window = windowOf(test, context);
  // Where the whole weld is one window, each lies in it, wherever it lies.
  if (window === null) return sumQuantities(sure.map(({ least }) => least!));
  if (test.of === "count")
    return { ...sumQuantities(sure.map(({ least }) => least!)), value: fewest(sure, window) };
  const isPlaced = (term: Term): boolean => term.middleMm !== null;
  const placed = laidOut(sure.filter(isPlaced), ({ least }) => least!, test, window);
  const floating = sure.filter((term) => !isPlaced(term)).map(({ least }) => held(least!, test, window));
  return [placed, ...floating].reduce((a, b) => (b.value > a.value ? b : a));
}

/**
 * How many lie in some window at least. A patch's pores lie anywhere in it, and one of which nobody knows where it lies
 * anywhere on the weld; what is no patch lies at its middle. Of a weld as long as nobody knows, one is certain.
 */
function fewest(sure: readonly Term[], { mm, weldLengthMm, closedLengthMm }: Window): number {
  const spreads = sure.map(({ observation, middleMm, least }): Spread => {
    const [from, to] = !isPatch(observation)
      ? [middleMm ?? 0, middleMm ?? weldLengthMm ?? Infinity]
      : (observation.alongMm ?? [0, weldLengthMm ?? Infinity]);
    return { from, to, amount: least!.value, unit: 1 };
  });
  return Math.ceil(certainInWindow(spreads, mm, closedLengthMm) * (1 - 1e-12));
}

/** No more than this can lie in any window; null where a size was never read. */
function possibleTotal(terms: readonly Term[], test: TotalTest, context: CaseContext): Quantity | null {
  if (terms.some((term) => term.most === null)) return null;
  const window = windowOf(test, context);
  if (window === null) return sumQuantities(terms.map(({ most }) => most!));
  // The pores of a patch may lie at either end of it: in any window that touches it.
  const isFixed = (term: Term): boolean => term.middleMm !== null && !isPatch(term.observation);
  const placed = laidOut(terms.filter(isFixed), ({ most }) => most!, test, window);
  const floating = terms.filter((term) => !isFixed(term)).map(({ most }) => held(most!, test, window));
  return sumQuantities([...(placed.value > 0 ? [placed] : []), ...floating]);
}

interface Window {
  readonly mm: number;
  readonly weldLengthMm: number | null;
  readonly closedLengthMm: number | null;
}

/** null: the whole weld is one window. */
function windowOf(test: TotalTest, { units, input }: CaseContext): Window | null {
  const { lengthMm, closed } = input.weld;
  const mm = test.window === null ? Infinity : constantValue(test.window, units);
  if (mm === Infinity || (lengthMm !== null && mm >= lengthMm)) return null;
  return { mm, weldLengthMm: lengthMm, closedLengthMm: closed ? lengthMm : null };
}

const isLength = (test: TotalTest): boolean => test.of !== "count" && test.of[0] === "length";

/** No more of a length than the window is long can lie in it. */
function held(amount: Quantity, test: TotalTest, window: Window): Quantity {
  return isLength(test) && amount.value > window.mm ? { ...amount, value: window.mm } : amount;
}

/** The worst window over those whose place is known. Of a length its place is the middle, its extent as it was read. */
function laidOut(
  terms: readonly Term[],
  amountOf: (term: Term) => Quantity,
  test: TotalTest,
  window: Window,
): Quantity {
  if (terms.length === 0) return sumQuantities([]);
  const whole = sumQuantities(terms.map(amountOf));
  // The value is what lies inside the window; the uncertainty that of all terms, which is the cautious side.
  if (isLength(test)) {
    const laid = terms.map((term): [number, number] => {
      const half = amountOf(term).value / 2;
      return [term.middleMm! - half, term.middleMm! + half];
    });
    return { ...whole, value: worstLength(laid, window.mm, window.closedLengthMm).sum };
  }
  const amounts = terms.map((term) => ({ at: term.middleMm!, amount: amountOf(term).value }));
  const worst = worstAmount(amounts, window.mm, window.closedLengthMm);
  const end = worst.from + window.mm * (1 + 1e-12);
  const shifts = window.closedLengthMm === null ? [0] : [0, window.closedLengthMm];
  const inside = terms.filter(({ middleMm }) =>
    shifts.some((by) => middleMm! + by >= worst.from && middleMm! + by <= end),
  );
  return { ...sumQuantities(inside.map(amountOf)), value: worst.sum };
}

function whatHelps(terms: readonly Term[], test: TotalTest, apart: boolean): readonly MissingReading[] {
  return terms.flatMap(({ observation, least, most, counts, middleMm, wanted }) => {
    const patch = isPatch(observation);
    return [
      ...(counts === null && test.only !== undefined ? [missing(test.only.size, observation.id)] : []),
      ...((patch || observation.aboutCount !== null) && most === null && observation.poreCount === null
        ? [missing("pore-count", observation.id)]
        : []),
      ...(test.of !== "count" && (least === null || (most === null && !patch) || least.source === "photo")
        ? [missing(patch ? "largest-pore" : wanted, observation.id)]
        : []),
      ...(apart && middleMm === null ? [missing("place-along", observation.id)] : []),
    ];
  });
}
