import { DiagnoseInputSchema, type DiagnoseInput } from "@/lib/diagnose";
import { type CauseId } from "@/lib/diagnose/cause-ids";
import { diagnoseWith } from "@/lib/diagnose/diagnose";
import { causeLinks } from "@/lib/diagnose/tables/links";
import { presentTuning, type Tuning } from "@/lib/diagnose/tuning";

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
  readonly source: string;
  readonly wanted: readonly CauseId[];
  readonly top: readonly CauseId[];
  /** 1 = first. */
  readonly toolRank: number;
  readonly lookUpRank: number;
  readonly named: boolean;
  readonly strictRank: number;
  /** Stated probability of the first cause. */
  readonly probability: number;
  /** Natural logarithm; see `logScore`. */
  readonly logScore: number;
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

/** Nearer to 0 or 1 than this no probability is held to its word. */
const DOUBT = 1e-6;

interface Stated {
  readonly id: CauseId;
  readonly probability: number;
}

/**
 * Log score of the stated probabilities, with the leading cause at work and the others not; of causes that count as
 * leading alike, the likeliest. The second half keeps it proper: otherwise more of everything would always win.
 */
export function logScore(stated: readonly Stated[], wanted: readonly CauseId[]): number {
  const leading = Math.max(
    DOUBT,
    ...stated.filter(({ id }) => wanted.includes(id)).map(({ probability }) => probability),
  );
  const others = stated.filter(({ id }) => !wanted.includes(id));
  return others.reduce(
    (sum, { probability }) => sum + Math.log(Math.max(DOUBT, 1 - probability)),
    Math.log(leading),
  );
}

export function scoreCase(one: PublishedCase, tuning: Tuning = presentTuning): ScoredRow {
  const input = DiagnoseInputSchema.parse(one.given);
  const result = diagnoseWith(input, tuning);
  if (!result.ok) throw new Error(`${one.id}: ${JSON.stringify(result.issues)}`);
  const { causes } = result.value;
  const list = causes.map(({ id }) => id);
  const wanted = one.ranked ? one.causes.slice(0, 1) : one.causes;
  return {
    id: one.id,
    source: one.source,
    wanted,
    top: list.slice(0, 3),
    toolRank: rankOf(list, wanted),
    lookUpRank: rankOf(lookUp(input), wanted),
    named: one.contextNamesCause,
    strictRank: rankOf(list, one.causes.slice(0, 1)),
    probability: causes[0]!.probability,
    logScore: logScore(causes, wanted),
  };
}

export interface Ranks {
  readonly n: number;
  readonly top1: number;
  readonly top3: number;
  readonly meanRank: number;
}

const summarise = (ranks: readonly number[]): Ranks => ({
  n: ranks.length,
  top1: ranks.filter((r) => r === 1).length / ranks.length,
  top3: ranks.filter((r) => r <= 3).length / ranks.length,
  meanRank: mean(ranks),
});

export const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;

/** Mean square between the stated probability of the first cause and whether it is right: 0 is perfect. */
export const brier = (rows: readonly ScoredRow[]): number =>
  mean(rows.map(({ probability, toolRank }) => (probability - (toolRank === 1 ? 1 : 0)) ** 2));

export function score(cases: readonly PublishedCase[]) {
  const rows = cases.map((one) => scoreCase(one));
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
