import { presentTuning, type Weights } from "@/lib/diagnose/tuning";
import published from "./diagnose/published.json";
import { bestOn, leaveOneSourceOut, type Fitting } from "./diagnose/left-out";
import { scoreCase, type PublishedCase, type ScoredRow } from "./diagnose/score";
import type { Told } from "./reliability";
import type { Scenario } from "./scenarios/scenario";
import { scoreScenario } from "./scenarios/score-scenario";

export const publishedCases = published as readonly PublishedCase[];

const ofRow = ({ probability, toolRank }: ScoredRow): Told => ({ probability, right: toolRank === 1 });

/** First causes of the scenarios whose first place is judged. */
export const toldOfScenarios = (
  scenarios: readonly Scenario[],
  weights: Weights = presentTuning.weights,
): readonly Told[] =>
  scenarios.flatMap((one) => scoreScenario(one, { ...presentTuning, weights }).first ?? []);

/** What the product says: the present weights. */
export const toldAtPresent = (scenarios: readonly Scenario[]): readonly Told[] => [
  ...publishedCases.map((one) => ofRow(scoreCase(one))),
  ...toldOfScenarios(scenarios),
];

/** Weights fitted by log score on other cases only: on the other sources, and for scenarios on the published cases. */
export const toldOutOfFold = (fitting: Fitting, scenarios: readonly Scenario[]): readonly Told[] => [
  ...leaveOneSourceOut(fitting, "by log score").rows.map(ofRow),
  ...toldOfScenarios(scenarios, fitting.grid[bestOn(fitting, "by log score")]!),
];
