import { fail, issue, ok, type Result } from "@/lib/base";
import { imperfections, type ImperfectionId } from "@/lib/trade";
import { caseContext, type CaseContext } from "./case-context";
import { applicability } from "./conditions";
import { findCriteria } from "./criteria";
import { onceEach } from "./once-each";
import { evaluateCriterion, observationsFor } from "./evaluate-criterion";
import { outcome } from "./outcome";
import type { CriteriaSet } from "./rule";
import { commonSettings, resolveSettings } from "./settings";
import { JudgeInputSchema, type JudgeInput } from "./types";
import { type AcceptIssue, type Verdict, type VerdictRow } from "./verdict";
import { unlistedCriterion } from "./unlisted";

/**
 * Judges one weld by one criteria set; with `only`, by its clauses on those imperfections and no others.
 *
 * Reject as soon as one row fails; accept only when every row that applies is met; otherwise cannot-say, with the
 * readings that would settle it. The verdict defers to the governing code, local rules and qualified people.
 *
 * Errors: bad-input (path and reason), unknown-criteria, bad-setting (path, the choices).
 */
export function judge(input: JudgeInput): Result<Verdict, AcceptIssue> {
  const parsed = JudgeInputSchema.safeParse(input);
  if (!parsed.success)
    return fail(
      ...parsed.error.issues.map(({ path, message }) =>
        issue(
          "bad-input" as const,
          path.map((step) => (typeof step === "number" ? step : String(step))),
          {
            reason: message,
          },
        ),
      ),
    );
  const set = findCriteria(parsed.data.criteriaId, parsed.data.shop);
  if (set === null) return fail(issue("unknown-criteria", ["criteriaId"], { id: parsed.data.criteriaId }));
  const settings = resolveSettings([...set.settings, ...commonSettings], parsed.data.settings);
  if (!settings.ok) return settings;
  return ok(verdictOf(set, caseContext(parsed.data, settings.value)));
}

function verdictOf(set: CriteriaSet, context: CaseContext): Verdict {
  const scope = scopeRow(set, context);
  const { only } = context.input;
  const asked = (id: ImperfectionId): boolean => only === null || only.includes(id);
  const perCriterion = set.criteria
    .filter(({ imperfections: about }) => only === null || about.some(asked))
    .map((criterion) => ({ criterion, rows: evaluateCriterion(criterion, set, context) }));
  const judged = perCriterion.flatMap((one) => one.rows);
  const observations = context.input.observations.filter(({ imperfection }) => asked(imperfection));
  const ruled = new Set(
    perCriterion
      .filter((one) => one.rows.some((row) => row.result !== "not-applicable"))
      .flatMap((one) => observationsFor(one.criterion, observations).map(({ id }) => id)),
  );
  const left = observations.filter(({ id }) => !ruled.has(id));
  const unlisted =
    left.length === 0
      ? []
      : evaluateCriterion(unlistedCriterion(left), set, {
          ...context,
          input: { ...context.input, observations: left },
        });
  const rows = [...scope, ...judged, ...unlisted].sort(worstFirst);
  const results = new Set(rows.map((row) => row.result));
  const verdict = results.has("fails") ? "reject" : results.has("open") ? "cannot-say" : "accept";
  return {
    criteriaId: set.id,
    criteriaTitle: set.title,
    edition: set.edition,
    // A set in which nothing applies has nothing to accept by.
    only,
    verdict: verdict === "accept" && !results.has("meets") ? "cannot-say" : verdict,
    rows,
    missing: onceEach(rows.flatMap((row) => row.missing)),
    notLookedFor: [...new Set(rows.flatMap((row) => row.notLookedFor))],
    settings: context.settings,
    referToInspector: context.input.observations
      .filter((one) => imperfections[one.imperfection].inspectorFirst)
      .map(({ id }) => id),
    notCovered: set.notCovered,
    checkYourCopy: rows.some((row) => row.checkYourCopy && row.result !== "not-applicable"),
  };
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
