import { needsCheck } from "@/lib/base";
import { caseContext, type CaseContext } from "./case-context";
import { applicability } from "./conditions";
import { findCriteria } from "./criteria";
import { constantValue, evaluateFormula } from "./formula";
import type { CriteriaSet, Criterion, Formula, Test, Variant } from "./rule";
import { commonSettings, resolveSettings } from "./settings";
import {
  shopQuantities,
  ShopRowSchema,
  type NotCarried,
  type ShopQuantity,
  type ShopRow,
} from "./shop-criteria";
import { JudgeInputSchema, type WeldKind } from "./types";

export interface ShopCopy {
  readonly rows: readonly ShopRow[];
  /** What was not copied, so that nobody believes it was: these and what the rows carry are the whole code. */
  readonly notCarried: NotCarried;
}

/**
 * A built-in set as rows to start from, as it reads for one kind of weld on one thickness (mm), with its default
 * settings. Limits that follow from the thickness become numbers. null: there is no such set. The copy is the shop's
 * own; the text of the code governs.
 */
export function shopRowsFrom(
  criteriaId: string,
  weld: { readonly kind: WeldKind; readonly thicknessMm: number },
): ShopCopy | null {
  const set = findCriteria(criteriaId, null);
  if (set === null) return null;
  const settings = resolveSettings([...set.settings, ...commonSettings], {});
  if (!settings.ok) return null;
  const context = caseContext(JudgeInputSchema.parse({ criteriaId, weld }), settings.value);
  const rows: ShopRow[] = [];
  const clauses: NotCarried["clauses"] = [];
  for (const criterion of set.criteria) {
    const copied = copyCriterion(set, criterion, context);
    rows.push(...copied.rows);
    if (copied.why !== null)
      clauses.push({ clause: criterion.clause, title: criterion.title, why: copied.why });
  }
  return {
    rows: rows.map((row, i) => ({ ...row, id: `row-${i + 1}` })),
    notCarried: { from: `${set.document} ${set.edition}`.slice(0, 200), clauses },
  };
}

interface Copied {
  readonly rows: readonly ShopRow[];
  readonly why: string | null;
}
const leave = (why: string): Copied => ({ rows: [], why });

function copyCriterion(set: CriteriaSet, criterion: Criterion, context: CaseContext): Copied {
  const answers = criterion.variants.map((variant) => ({ variant, ...applicability(variant.when, context) }));
  // The first that applies counts; one before it that may apply leaves that open.
  const first = answers.find(({ applies }) => applies !== false);
  if (first === undefined) return leave("it does not hold for this kind of weld and thickness");
  if (first.applies === null) return leave("it depends on more than the weld and its thickness");
  if (criterion.onlyWhenRead === true) return leave("it is judged only where the reading was taken");
  const tests = first.variant.tests.map((test) => copyTest(test, context));
  const whys = tests.flatMap((test) => (typeof test === "string" ? [test] : []));
  const rows = tests.flatMap((test) =>
    typeof test === "string" ? [] : [rowOf(set, criterion, first.variant, test)],
  );
  return { rows, why: whys[0] ?? (rows.length === 0 ? "it sets no limit" : null) };
}

type Limits = Pick<ShopRow, "quantity" | "limit" | "windowMm">;

/** The same test in a shop's terms, or why there are none. */
function copyTest(test: Test, context: CaseContext): Limits | string {
  switch (test.test) {
    case "none-allowed":
      return { quantity: "none-allowed", limit: null, windowMm: null };
    case "allowed":
      return "it sets no limit";
    case "person-decides":
    case "figure-by-person":
      return "a person decides it";
    case "stack":
      return "it adds up imperfections in one cross section";
    case "each": {
      const [size] = test.size;
      if (size === undefined || test.size.length > 1) return "it takes the greatest of several sizes";
      return withLimit(size, test.limit, context);
    }
    case "total": {
      if (test.only !== undefined || test.unless !== undefined) return "it counts only some of them";
      const quantity = totalQuantity(test.of);
      if (quantity === null) return "it adds up sizes that a row cannot add up";
      const windowMm = test.window === null ? null : constantValue(test.window, "si");
      const limits = withLimit(quantity, test.limit, context);
      return typeof limits === "string" ? limits : { ...limits, windowMm };
    }
    case "bead": {
      const quantity = shopQuantities.find((name) => name === test.figure);
      if (quantity === undefined || test.comparison === ">=") return "a row cannot say this figure";
      return withLimit(quantity, test.limit, context);
    }
  }
}

function totalQuantity(of: Extract<Test, { test: "total" }>["of"]): ShopQuantity | null {
  if (of === "count") return "count";
  if (of.length === 1 && of[0] === "length") return "total-length";
  return of[0] === "diameter" ? "total-diameter" : null;
}

function withLimit(quantity: ShopQuantity, formula: Formula, context: CaseContext): Limits | string {
  const { low, high } = evaluateFormula(formula, context.symbols, "si");
  if (low !== high || !Number.isFinite(low)) return "its limit depends on more than the thickness";
  return { quantity, limit: Number(low.toFixed(4)), windowMm: null };
}

function rowOf(set: CriteriaSet, criterion: Criterion, { source }: Variant, limits: Limits): ShopRow {
  const doubt = needsCheck(source) ? "; check your copy" : "";
  // A row cannot name places: holding everywhere it is never looser than the code.
  const places = criterion.places ? "; the code means certain places only, this row all of them" : "";
  return ShopRowSchema.parse({
    id: "row",
    title: criterion.title.slice(0, 120),
    imperfections: criterion.imperfections,
    carries: { clause: criterion.clause, title: criterion.title },
    ...limits,
    note: `after ${set.document} ${set.edition}, ${criterion.clause}${places}${doubt}`,
  });
}
