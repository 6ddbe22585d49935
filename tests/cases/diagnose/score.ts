import { diagnose, DiagnoseInputSchema, type DiagnoseInput } from "@/lib/diagnose";
import { type CauseId } from "@/lib/diagnose/cause-ids";
import { causeLinks } from "@/lib/diagnose/tables/links";

export interface PublishedCase {
  readonly id: string;
  /** The document the case stands in. */
  readonly source: string;
  /** False: the source does not rank its causes, so any of them counts as leading. */
  readonly ranked: boolean;
  /** The case's own context already says what was wrong; scored apart as well. */
  readonly contextNamesCause: boolean;
  readonly encoding: string;
  readonly given: unknown;
  readonly causes: readonly CauseId[];
}

export interface ScoredRow {
  readonly id: string;
  readonly wanted: readonly CauseId[];
  readonly top: readonly CauseId[];
  /** 1 = first. */
  readonly toolRank: number;
  readonly lookUpRank: number;
  readonly named: boolean;
  readonly strictRank: number;
}

const rankOf = (list: readonly CauseId[], wanted: readonly CauseId[]) => {
  const ranks = wanted.map((id) => list.indexOf(id)).filter((i) => i >= 0);
  // A cause the list does not hold ranks behind all that it holds.
  return ranks.length === 0 ? list.length + 1 : Math.min(...ranks) + 1;
};

/** The wall table: for the first mark its causes in printed order, then those of the next marks. */
export function lookUp({ setup, findings }: DiagnoseInput): readonly CauseId[] {
  const rows = findings.flatMap(({ imperfection }) =>
    causeLinks.filter(
      (link) =>
        link.imperfection === imperfection &&
        (setup.process === null || link.processes.includes(setup.process)),
    ),
  );
  return [...new Set(rows.map(({ cause }) => cause))];
}

function scoreCase(one: PublishedCase): ScoredRow {
  const input = DiagnoseInputSchema.parse(one.given);
  const result = diagnose(input);
  if (!result.ok) throw new Error(`${one.id}: ${JSON.stringify(result.issues)}`);
  const list = result.value.causes.map(({ id }) => id);
  const wanted = one.ranked ? one.causes.slice(0, 1) : one.causes;
  return {
    id: one.id,
    wanted,
    top: list.slice(0, 3),
    toolRank: rankOf(list, wanted),
    lookUpRank: rankOf(lookUp(input), wanted),
    named: one.contextNamesCause,
    strictRank: rankOf(list, one.causes.slice(0, 1)),
  };
}

const summarise = (ranks: readonly number[]) => ({
  n: ranks.length,
  top1: ranks.filter((r) => r === 1).length / ranks.length,
  top3: ranks.filter((r) => r <= 3).length / ranks.length,
  meanRank: ranks.reduce((a, b) => a + b, 0) / ranks.length,
});

export function score(cases: readonly PublishedCase[]) {
  const rows = cases.map(scoreCase);
  const unnamed = rows.filter(({ named }) => !named);
  return {
    rows,
    summary: {
      tool: summarise(rows.map(({ toolRank }) => toolRank)),
      "look-up in table order": summarise(rows.map(({ lookUpRank }) => lookUpRank)),
      "tool, cause not named in context": summarise(unnamed.map(({ toolRank }) => toolRank)),
      "look-up, cause not named": summarise(unnamed.map(({ lookUpRank }) => lookUpRank)),
      "tool, first key only": summarise(rows.map(({ strictRank }) => strictRank)),
    },
  };
}
