import type { Quantity } from "@/lib/measure";
import type { CaseContext } from "./case-context";
import { decide, spreadOf } from "./decide";
import { evaluateFormula } from "./formula";
import { isPatch, sizeOf } from "./size-of";
import type { SizeName, Test, Threshold } from "./rule";
import type { Observation } from "./types";

export type TotalTest = Extract<Test, { test: "total" }>;

/** One observation as it enters the total: no less than `least`, and no more than `most` where that is known. */
export interface Term {
  readonly observation: Observation;
  /** null: nothing of its size was read. */
  readonly least: Quantity | null;
  /** null: no bound is known. */
  readonly most: Quantity | null;
  /** Where along the weld its middle lies; null: anywhere. */
  readonly middleMm: number | null;
  /** Beyond the threshold: true; null when the reading does not say. Those that are not are left out. */
  readonly counts: true | null;
  readonly wanted: SizeName;
  readonly figures: readonly string[];
}

/** What each observation may add; those surely below the threshold add nothing. */
export function termsOf(
  test: TotalTest,
  observations: readonly Observation[],
  context: CaseContext,
): readonly Term[] {
  return observations.flatMap((observation): Term[] => {
    const passed = test.only === undefined ? true : passes(test.only, observation, context);
    if (passed === false) return [];
    const middleMm =
      observation.alongMm === null ? null : (observation.alongMm[0] + observation.alongMm[1]) / 2;
    const threshold = test.only === undefined ? [] : sizeOf(observation, [test.only.size]).figures;
    const amount = amountOf(test, observation);
    return [{ observation, counts: passed, middleMm, ...amount, figures: [...amount.figures, ...threshold] }];
  });
}

type Amount = Pick<Term, "least" | "most" | "wanted" | "figures">;

function amountOf(test: TotalTest, observation: Observation): Amount {
  if (test.of === "count") return numberOf(observation);
  if (isPatch(observation) && test.of.includes("diameter")) return patchAmount(observation);
  const { quantity, whole, wanted, figures } = sizeOf(observation, test.of);
  return { least: quantity, most: whole ? quantity : null, wanted, figures };
}

/** How many it is in all: as counted, or at least two where it is a patch, or at least what a guess leaves certain. */
function numberOf(observation: Observation): Amount {
  const { id, poreCount, aboutCount } = observation;
  const number = (n: number): Quantity => ({ ...one, value: n });
  const bare = isPatch(observation) ? 2 : 1;
  if (isPatch(observation) && poreCount !== null)
    return {
      least: number(poreCount),
      most: number(poreCount),
      wanted: "diameter",
      figures: [`${id}.poreCount`],
    };
  if (aboutCount !== null) {
    const least = Math.max(bare, Math.ceil(CERTAIN_SHARE * aboutCount));
    return { least: number(least), most: null, wanted: "diameter", figures: [`${id}.aboutCount`] };
  }
  return { least: number(bare), most: bare === 1 ? one : null, wanted: "diameter", figures: [] };
}

/** Of a count by eye so much is taken as certain (own estimate). */
const CERTAIN_SHARE = 0.5;

/** A patch holds its largest pore, and no more than as many of that size as were counted. A guess makes no sum. */
function patchAmount(observation: Observation): Amount {
  const { poreCount } = observation;
  const { quantity, whole, figures } = sizeOf(observation, ["diameter"]);
  const counted = poreCount === null ? [] : [`${observation.id}.poreCount`];
  const most =
    quantity === null || poreCount === null || !whole
      ? null
      : {
          ...quantity,
          value: quantity.value * poreCount,
          expandedUncertainty: quantity.expandedUncertainty * poreCount,
          budget: [],
        };
  return { least: quantity, most, wanted: "diameter", figures: [...figures, ...counted] };
}

const one: Quantity = { unit: "ratio", value: 1, expandedUncertainty: 0, source: "stated", budget: [] };

/** Whether an observation is beyond the threshold; null when that cannot be told. */
function passes(only: Threshold, observation: Observation, context: CaseContext): boolean | null {
  const { quantity } = sizeOf(observation, [only.size]);
  if (quantity === null) return null;
  const range = evaluateFormula(only.value, context.symbols, context.units);
  const spread = spreadOf(quantity, context.rule);
  const figure = { low: quantity.value, high: quantity.value, spread };
  const { result } = only.bound === "above" ? decide(figure, "<=", range) : decide(figure, ">=", range);
  if (result === "open") return null;
  return only.bound === "above" ? result === "fails" : result === "meets";
}
