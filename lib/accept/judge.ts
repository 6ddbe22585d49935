import { fail, issue, ok, type Result } from "@/lib/base";
import { imperfections, type ImperfectionId } from "@/lib/trade";
import { candidateVariants } from "./candidate-variants";
import { caseContext, type CaseContext } from "./case-context";
import { applicability } from "./conditions";
import { contradictionsOf, contradictionRow } from "./contradictions";
import { findCriteria } from "./criteria";
import { evaluateCriterion, observationsFor } from "./evaluate-criterion";
import { onceEach } from "./once-each";
import { outcome } from "./outcome";
import type { CriteriaSet, Criterion } from "./rule";
import { commonSettings, resolveSettings } from "./settings";
import { JudgeInputSchema, type JudgeInput } from "./types";
import { unlistedCriterion } from "./unlisted";
import { unusedReadings } from "./unused-readings";
import { type AcceptIssue, type Verdict, type VerdictRow } from "./verdict";

/**
 * Judges one weld by one criteria set; with `only`, by its clauses on those imperfections and no others.
 *
 * Reject as soon as one row fails; accept only when every row that applies is met and no readings contradict each other;
 * otherwise cannot-say, with the readings that would settle it. The verdict defers to the governing code, local rules
 * and qualified people.
 *
 * Errors: bad-input (path and reason), unknown-criteria, bad-setting (path, the choices).
 */
export function judge(input: JudgeInput): Result<Verdict, AcceptIssue> {
  const parsed = JudgeInputSchema.safeParse(input);
  return parsed.success
    ? judgeParsed(parsed.data)
    : fail(
        ...parsed.error.issues.map(({ path, message }) =>
          issue(
            "bad-input" as const,
            path.map((step) => (typeof step === "number" ? step : String(step))),
            { reason: message },
          ),
        ),
      );
}

/** The same for an input that has been through the schema. */
export function judgeParsed(input: JudgeInput): Result<Verdict, AcceptIssue> {
  const set = findCriteria(input.criteriaId, input.shop);
  if (set === null) return fail(issue("unknown-criteria", ["criteriaId"], { id: input.criteriaId }));
  const settings = resolveSettings([...set.settings, ...commonSettings], input.settings);
  if (!settings.ok) return settings;
  return ok(verdictOf(set, caseContext(input, settings.value)));
}

function verdictOf(set: CriteriaSet, context: CaseContext): Verdict {
  const { input } = context;
  const asked = criteriaAsked(set, input.only);
  const perCriterion = asked.map((criterion) => ({
    criterion,
    rows: evaluateCriterion(criterion, set, context),
  }));
  const ruledRows = perCriterion.flatMap(({ rows }) => rows);
  const contradictions = contradictionsOf(context, ruledRows);
  const rows = [
    ...scopeRow(set, context),
    ...contradictionRow(set, contradictions),
    ...ruledRows,
    ...unlistedRows(set, perCriterion, context),
  ].sort(worstFirst);
  return {
    criteriaId: set.id,
    criteriaTitle: set.title,
    edition: set.edition,
    only: input.only,
    verdict: wordOf(rows),
    rows,
    lookedAt: isLookedAt(input),
    contradictions,
    unused: unusedReadings(input, rows),
    missing: onceEach(rows.flatMap((row) => row.missing)),
    notLookedFor: [...new Set(rows.flatMap((row) => row.notLookedFor))],
    settings: context.settings,
    referToInspector: input.observations
      .filter((one) => imperfections[one.imperfection].inspectorFirst)
      .map(({ id }) => id),
    notCovered: set.notCovered,
    notCarried: set.notCarried ?? null,
    checkYourCopy: rows.some((row) => row.checkYourCopy && row.result !== "not-applicable"),
  };
}

function wordOf(rows: readonly VerdictRow[]): Verdict["verdict"] {
  const results = new Set(rows.map((row) => row.result));
  if (results.has("fails")) return "reject";
  // A set in which nothing applies has nothing to accept by.
  return results.has("open") || !results.has("meets") ? "cannot-say" : "accept";
}

/** With `only`, the clauses that speak of those imperfections, and of them alone. */
function criteriaAsked(set: CriteriaSet, only: JudgeInput["only"]): readonly Criterion[] {
  if (only === null) return set.criteria;
  return set.criteria.flatMap((criterion): Criterion[] => {
    const mine = criterion.imperfections.filter((id) => only.includes(id));
    return mine.length === 0 ? [] : [{ ...criterion, imperfections: mine }];
  });
}

/** Marked, asked for and met by no clause that applies: a qualified person decides. */
function unlistedRows(
  set: CriteriaSet,
  perCriterion: readonly { readonly criterion: Criterion; readonly rows: readonly VerdictRow[] }[],
  context: CaseContext,
): readonly VerdictRow[] {
  const { only, observations } = context.input;
  const isAsked = (id: ImperfectionId): boolean => only === null || only.includes(id);
  const mine = observations.filter(({ imperfection }) => isAsked(imperfection));
  const ruled = new Set(
    perCriterion
      // A sum over a cross section is no rule for the single imperfection in it.
      .filter(({ criterion }) =>
        criterion.variants.some(({ tests }) => tests.some(({ test }) => test !== "stack")),
      )
      .filter(({ rows }) => rows.some((row) => row.result !== "not-applicable"))
      // A clause that may not apply is no rule to rely on.
      .filter(({ criterion }) => !candidateVariants(criterion, context).mayNotApply)
      .flatMap(({ criterion }) => observationsFor(criterion, mine).map(({ id }) => id)),
  );
  const left = mine.filter(({ id }) => !ruled.has(id));
  if (left.length === 0) return [];
  const alone = { ...context, input: { ...context.input, observations: left } };
  return evaluateCriterion(unlistedCriterion(left), set, alone);
}

function isLookedAt({ observations, lookedFor, beadReadings }: JudgeInput): boolean {
  const read = Object.values(beadReadings).some((reading) => reading !== null);
  return observations.length > 0 || lookedFor.length > 0 || read;
}

/** Outside its scope, or where that cannot be told, a set decides nothing for the weld as a whole. */
function scopeRow(set: CriteriaSet, context: CaseContext): readonly VerdictRow[] {
  const { applies, missing } = applicability(set.scope, context);
  const kindFits = set.weldKinds.includes(context.input.weld.kind);
  if (applies === true && kindFits) return [];
  const reason = applies === null && kindFits ? "weld-fact-missing" : "does-not-apply";
  return [
    {
      ruleId: `${set.id}-scope`,
      title: "Scope of the set",
      imperfections: [],
      clause: set.scopeSource.clause ?? "scope",
      edition: set.edition,
      ...outcome("open", reason, { missing }),
      limitsPossible: [],
      notLookedFor: [],
      source: set.scopeSource,
      checkYourCopy: set.scopeSource.confidence !== "seen",
    },
  ];
}

const severity = { fails: 0, open: 1, meets: 2, "not-applicable": 3 } as const;

function worstFirst(a: VerdictRow, b: VerdictRow): number {
  return severity[a.result] - severity[b.result] || relativeMargin(a) - relativeMargin(b);
}

/** Margin in proportion to the limit; a failed "none allowed" is as bad as can be, a row without figures the least. */
function relativeMargin(row: VerdictRow): number {
  if (row.result === "fails" && (row.limit === null || row.limit.value === 0)) return -Number.MAX_VALUE;
  if (row.margin === null || row.limit === null || row.limit.value === 0) return Number.MAX_VALUE;
  return row.margin / row.limit.value;
}
