import { sumQuantities, worstAmount, worstLength, type Quantity } from "@/lib/measure";
import { missing, type CaseContext } from "./case-context";
import { decide, spreadOf } from "./decide";
import { constantValue, evaluateFormula } from "./formula";
import { decided, limitOf, type Outcome } from "./outcome";
import { sizeOf } from "./evaluate-each";
import type { Test, Threshold } from "./rule";
import type { Observation } from "./types";
import type { MissingReading } from "./verdict";

type TotalTest = Extract<Test, { test: "total" }>;

/** One observation as it enters the total. */
interface Term {
  readonly observation: Observation;
  /** null: its size was never read. */
  readonly amount: Quantity | null;
  /** Beyond the threshold: true, false is left out before, null when the reading does not say. */
  readonly counts: true | null;
}

const one: Quantity = {
  unit: "ratio",
  value: 1,
  expandedUncertainty: 0,
  source: "stated",
  budget: [],
};

/**
 * The worst total in any window, between what is certain and what is possible: an observation whose threshold reading
 * or place is missing counts towards the possible only. Meets when even the possible total does.
 */
export function evaluateTotal(
  test: TotalTest,
  observations: readonly Observation[],
  context: CaseContext,
): Outcome {
  const range = evaluateFormula(test.limit, context.symbols, context.units);
  const unit = test.of === "count" ? "count" : "mm";
  const limit = limitOf(test.limit, range, "<=", unit, context.units);
  const terms = observations.flatMap((observation): Term[] => {
    const counts = test.only === undefined ? true : passes(test.only, observation, context);
    if (counts === false) return [];
    const amount = test.of === "count" ? one : sizeOf(observation, test.of);
    return [{ observation, amount, counts }];
  });
  const certain = worstTotal(
    terms.filter((term) => term.counts === true),
    test,
    context,
    "least",
  );
  const possible = worstTotal(terms, test, context, "most");
  const spread = spreadOf(possible.quantity, context.guarded);
  const lowSpread = spreadOf(certain.quantity, context.guarded);
  const incomplete = terms.some((term) => term.amount === null);
  const low = certain.quantity.value - lowSpread;
  const high = incomplete ? Infinity : possible.quantity.value + spread;
  const better = whatHelps(terms, test, possible.placeMatters);
  return decided(decide({ low, high, spread: 0 }, "<=", range), limit, {
    value: incomplete ? certain.quantity.value : possible.quantity.value,
    expandedUncertainty: possible.quantity.expandedUncertainty,
    readingsUsed: terms.map((term) => term.observation.id),
    better,
    incomplete: incomplete || possible.placeMatters || terms.some((term) => term.counts === null),
  });
}

/** Whether an observation is beyond the threshold; null when that cannot be told. */
function passes(only: Threshold, observation: Observation, context: CaseContext): boolean | null {
  const size = sizeOf(observation, [only.size]);
  const range = evaluateFormula(only.value, context.symbols, context.units);
  if (size === null) return null;
  const spread = spreadOf(size, context.guarded);
  const figure = { low: size.value, high: size.value, spread };
  const { result } = only.bound === "above" ? decide(figure, "<=", range) : decide(figure, ">=", range);
  if (result === "open") return null;
  return only.bound === "above" ? result === "fails" : result === "meets";
}

interface Total {
  readonly quantity: Quantity;
  /** A place along the weld that was not given would change the total. */
  readonly placeMatters: boolean;
}

function worstTotal(
  terms: readonly Term[],
  test: TotalTest,
  context: CaseContext,
  side: "least" | "most",
): Total {
  const known = terms.filter((term): term is Term & { amount: Quantity } => term.amount !== null);
  const window = test.window === null ? null : constantValue(test.window, context.units);
  const { lengthMm, closed } = context.input.weld;
  const whole = window === null || (lengthMm !== null && window >= lengthMm);
  if (whole) return { quantity: sumQuantities(known.map((term) => term.amount)), placeMatters: false };
  const placed = known.filter((term) => term.observation.alongMm !== null);
  const floating = known.filter((term) => term.observation.alongMm === null);
  const inWindow = placedTotal(placed, test, window, closed ? lengthMm : null);
  if (floating.length === 0) return { quantity: inWindow, placeMatters: false };
  const held = floating.map((term) => heldBy(window, test, term.amount));
  // Without a place it may lie in the worst window, and surely lies in some window.
  const largest = held.reduce((a, b) => (b.value > a.value ? b : a));
  const least = inWindow.value >= largest.value ? inWindow : largest;
  const most = sumQuantities([...(inWindow.value > 0 ? [inWindow] : []), ...held]);
  return {
    quantity: side === "least" ? least : most,
    placeMatters: most.value > least.value * (1 + 1e-9),
  };
}

/** No more of a length than the window is long can lie in it. */
function heldBy(window: number, test: TotalTest, amount: Quantity): Quantity {
  const isLength = test.of !== "count" && test.of.includes("length");
  return isLength && amount.value > window ? { ...amount, value: window } : amount;
}

function placedTotal(
  placed: readonly (Term & { amount: Quantity })[],
  test: TotalTest,
  window: number,
  closedLengthMm: number | null,
): Quantity {
  if (placed.length === 0) return sumQuantities([]);
  const asLength = test.of !== "count" && test.of[0] === "length";
  const span = (term: Term): readonly [number, number] => {
    const [a, b] = term.observation.alongMm!;
    return a <= b ? [a, b] : [b, a];
  };
  const middle = (term: Term): number => (span(term)[0] + span(term)[1]) / 2;
  const worst = asLength
    ? worstLength(placed.map(span), window, closedLengthMm)
    : worstAmount(
        placed.map((term) => ({ at: middle(term), amount: term.amount.value })),
        window,
        closedLengthMm,
      );
  const end = worst.from + window * (1 + 1e-12);
  const shifts = closedLengthMm === null ? [0] : [0, closedLengthMm];
  const inside = placed.filter((term) =>
    shifts.some((by) =>
      asLength
        ? span(term)[0] + by < end && span(term)[1] + by > worst.from
        : middle(term) + by >= worst.from && middle(term) + by <= end,
    ),
  );
  // The value is the part inside the window; the uncertainty that of the whole terms, which is the cautious side.
  return { ...sumQuantities(inside.map((term) => term.amount)), value: worst.sum };
}

function whatHelps(
  terms: readonly Term[],
  test: TotalTest,
  placeMatters: boolean,
): readonly MissingReading[] {
  return terms.flatMap(({ observation, amount, counts }) => [
    ...(counts === null && test.only !== undefined ? [missing(test.only.size, observation.id)] : []),
    ...(test.of !== "count" && (amount === null || amount.source === "photo")
      ? [missing(test.of[0]!, observation.id)]
      : []),
    ...(placeMatters && observation.alongMm === null ? [missing("place-along", observation.id)] : []),
  ]);
}
