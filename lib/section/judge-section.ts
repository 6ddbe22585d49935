import { fail, issue, needsCheck, ok, type Result } from "@/lib/base";
import { decideFigure } from "./decide-figure";
import { decideFused, decideMarks, decideNone } from "./decide-marks";
import type { Finding } from "./finding";
import type { SectionCriteriaSet, SectionCriterion } from "./criteria";
import type { SectionGiven, SectionRow, SectionVerdict } from "./judgement";
import { sectionSets } from "./tables/macro-sets";
import type { SectionFigures, SectionIssue } from "./types";

/**
 * Judges a section row by row, three ways: what was not read is never met. A figure off the photo keeps its uncertainty as
 * a guard band on both sides of the limit (JCGM 106:2012, 8.3). Issue: unknown-set.
 */
export function judgeSection(
  figures: SectionFigures,
  given: SectionGiven,
): Result<SectionVerdict, SectionIssue> {
  const set = sectionSets.find(({ id }) => id === given.setId);
  if (set === undefined) return fail(issue("unknown-set", ["setId"], { id: given.setId }));
  const rows = set.criteria.map((criterion) => rowOf(set, criterion, figures, given));
  const worst = (["fails", "open"] as const).find((result) => rows.some((row) => row.result === result));
  return ok({ setId: set.id, title: set.title, result: worst ?? "meets", rows, notCovered: set.notCovered });
}

function rowOf(
  { document, edition }: SectionCriteriaSet,
  criterion: SectionCriterion,
  figures: SectionFigures,
  given: SectionGiven,
): SectionRow {
  const { id, title, clause, source } = criterion;
  return {
    criterionId: id,
    title,
    document,
    edition,
    clause,
    ...findingOf(criterion, figures, given),
    source,
    checkYourCopy: needsCheck(source),
  };
}

function findingOf({ test }: SectionCriterion, figures: SectionFigures, given: SectionGiven): Finding {
  switch (test.test) {
    case "figure":
      return decideFigure(test, figures, given);
    case "fused":
      return decideFused(figures, given);
    case "none":
      return decideNone(test.imperfections, given);
    case "each":
      return decideMarks(test, figures, given);
  }
}
